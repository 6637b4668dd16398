import { memo } from 'react'
import type { TimeView } from '../time/time-view'
import { LaneRow } from './lane'
import styles from './time-axis.module.css'
import { timeTicks } from './time-ticks'

/** Labels nearer to an end of the axis than this are set inwards, pixels. */
const END_PX = 24

interface TimeAxisProps {
  readonly view: TimeView
  readonly sampleRate: number
  readonly width: number
  readonly height: number
  /** Size of text against the usual. */
  readonly textScale: number
}

/** The one time axis that all lanes share. */
export const TimeAxis = memo(({ view, sampleRate, width, height, textScale }: TimeAxisProps) => {
  const ticks = timeTicks(view, sampleRate, width)
  return (
    <LaneRow label={null}>
      <svg
        aria-hidden="true"
        className={styles.axis}
        height={height}
        viewBox={`0 0 ${Math.max(1, width)} ${height}`}
      >
        <line className={styles.tick} x1="0" x2={width} y1="0.5" y2="0.5" />
        {ticks.map(({ x, label }) => (
          <g key={label}>
            <line className={styles.tick} x1={x} x2={x} y1="0" y2="5" />
            <text className={styles.scale} x={x} y={17 * textScale} textAnchor={anchor(x, width)}>
              {label}
            </text>
          </g>
        ))}
      </svg>
    </LaneRow>
  )
})

function anchor(x: number, width: number): 'start' | 'middle' | 'end' {
  if (x < END_PX) return 'start'
  return x > width - END_PX ? 'end' : 'middle'
}
