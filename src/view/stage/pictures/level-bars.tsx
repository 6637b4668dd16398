import { useId, useMemo } from 'react'
import { type DetectorLevel, levelHistogram } from '../../../core'
import { barsPath } from './bars-path'
import styles from './level-bars.module.css'
import type { PlotArea } from './picture-frame'
import { HIGHEST_DBFS } from './static-curve'

/** Width of a bar, dB. */
const BAR_DB = 1
/** The highest bar reaches up this part of the plot. */
const HIGHEST_BAR = 0.36

interface LevelBarsProps {
  readonly level: DetectorLevel | null
  readonly fromDbfs: number
  readonly thresholdDb: number
  readonly area: PlotArea
}

/** How often each level occurs along the take, as pale bars; those above the threshold in the stage's colour. */
export function LevelBars({ level, fromDbfs, thresholdDb, area }: LevelBarsProps) {
  const clip = useId()
  const { left, right, top, bottom } = area
  const histogram = useMemo(
    () => level && levelHistogram(level, fromDbfs, HIGHEST_DBFS, BAR_DB),
    [level, fromDbfs],
  )
  const path = useMemo(
    () =>
      histogram && barsPath(histogram.shares, { left, right, bottom, height: HIGHEST_BAR * (bottom - top) }),
    [histogram, left, right, top, bottom],
  )
  if (!path) return null
  const share = (thresholdDb - fromDbfs) / (HIGHEST_DBFS - fromDbfs)
  const at = left + Math.min(1, Math.max(0, share)) * (right - left)
  return (
    <>
      <clipPath id={clip}>
        <rect x={at} y={top} width={right - at} height={bottom - top} />
      </clipPath>
      <path className={styles.below} d={path} />
      <path className={styles.above} d={path} clipPath={`url(#${clip})`} />
    </>
  )
}
