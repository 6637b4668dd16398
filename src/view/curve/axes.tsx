import { memo } from 'react'
import { signed } from '../../core'
import styles from './axes.module.css'
import { decibelTicks, frequencyTicks, type Plot } from './plot'

/** Hairlines and figures of the plot: frequency below, gain at the left. */
export const Axes = memo(({ plot }: { plot: Plot }) => {
  const { x, y, width, height, margin, textScale } = plot
  const right = width - margin.right
  const bottom = height - margin.bottom
  return (
    <g>
      {frequencyTicks(plot).map(({ hz, label }) => (
        <g key={hz}>
          <path className={styles.line} d={`M${x(hz)},${bottom}v4`} />
          <text className={styles.tick} x={x(hz)} y={bottom + 17 * textScale} textAnchor="middle">
            {label}
          </text>
        </g>
      ))}
      <text className={styles.tick} x={right + 24 * textScale} y={bottom + 17 * textScale}>
        Hz
      </text>
      <text className={styles.tick} x={margin.left + 4} y={margin.top + 14 * textScale}>
        dB
      </text>
      {decibelTicks(plot).map((db) => (
        <g key={db}>
          <path className={db === 0 ? styles.zero : styles.line} d={`M${margin.left},${y(db)}H${right}`} />
          <text className={styles.tick} x={margin.left - 6} y={y(db)} dy="0.35em" textAnchor="end">
            {signed(db, 0)}
          </text>
        </g>
      ))}
    </g>
  )
})
