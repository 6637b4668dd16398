import { memo } from 'react'
import { signed } from '../../core'
import styles from './axes.module.css'
import { decibelTicks, frequencyTicks, type Plot } from './plot'

/** Grid lines and figures of the plot: frequency below, gain at the left. */
export const Axes = memo(({ plot }: { plot: Plot }) => {
  const { x, y, width, height, margin, textScale } = plot
  const right = width - margin.right
  const bottom = height - margin.bottom
  return (
    <g>
      {frequencyTicks(plot).map(({ hz, label }) => (
        <g key={hz}>
          <path className={styles.line} d={`M${x(hz)},${margin.top}V${bottom}`} />
          <text className={styles.tick} x={x(hz)} y={bottom + 16 * textScale} textAnchor="middle">
            {label}
          </text>
        </g>
      ))}
      <text className={styles.tick} x={width} y={bottom + 16 * textScale} textAnchor="end">
        Hz
      </text>
      {decibelTicks(plot).map((db) => (
        <g key={db}>
          <path className={db === 0 ? styles.zero : styles.line} d={`M${margin.left},${y(db)}H${right}`} />
          <text className={styles.tick} x={margin.left - 6} y={y(db)} dy="0.35em" textAnchor="end">
            {signed(db, 0)}
          </text>
        </g>
      ))}
      <text className={styles.unit} x={margin.left + 4} y={margin.top + 12 * textScale}>
        dB
      </text>
    </g>
  )
})
