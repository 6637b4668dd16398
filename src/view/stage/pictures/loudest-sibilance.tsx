import { plain } from '../../../core'
import styles from './loudest-sibilance.module.css'
import pictures from './pictures.module.css'
import type { MetLevel } from './sibilance-level'

/** Width of the text beside the level. */
const WORDS_WIDTH = 80

interface LoudestSibilanceProps {
  readonly met: MetLevel
  readonly thresholdDb: number
  /** The band above the crossover. */
  readonly left: number
  readonly right: number
  /** Left edge of the plot. */
  readonly start: number
  y(levelDbfs: number): number
}

/** What exceeds the threshold of a de-esser: from there up to the loudest level. */
export function LoudestSibilance({
  met: { levelDbfs, orMore },
  thresholdDb,
  left,
  right,
  start,
  y,
}: LoudestSibilanceProps) {
  const top = y(levelDbfs)
  const outside = left - start > WORDS_WIDTH
  return (
    <>
      <rect
        className={styles.passing}
        x={left}
        y={top}
        width={right - left}
        height={Math.max(0, y(thresholdDb) - top)}
      />
      <path className={orMore ? styles.orMore : styles.loudest} d={`M${left},${top}H${right}`} />
      <text
        className={pictures.tick}
        x={outside ? left - 4 : left + 4}
        y={top}
        dy={outside ? '0.35em' : '-0.4em'}
        textAnchor={outside ? 'end' : 'start'}
      >
        {orMore ? 'above' : 'loudest'} {plain(levelDbfs, 0)}
      </text>
    </>
  )
}
