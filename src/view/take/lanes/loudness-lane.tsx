import { memo, useMemo } from 'react'
import { plain } from '../../../core'
import { sideWords } from '../../../session/comparison/side-words'
import { type Evidence, useListen } from '../../context/app-context'
import type { TimeView } from '../time/time-view'
import { Lane, type LaneScale } from './lane'
import { laneHeights } from './lane-heights'
import { LoudnessLabel } from './lane-labels'
import { loudnessPath, loudnessRange } from './loudness-geometry'
import styles from './loudness-lane.module.css'

interface LoudnessLaneProps {
  readonly evidence: Evidence | null
  readonly view: TimeView
  readonly sampleRate: number
  readonly width: number
  /** Size of text against the usual: the lane grows with it. */
  readonly textScale: number
}

/** Short-term loudness along the take, without (dashed) and with (solid). */
export const LoudnessLane = memo(({ evidence, view, sampleRate, width, textScale }: LoudnessLaneProps) => {
  const height = Math.round(laneHeights.loudness * textScale)
  const range = useMemo(
    () => (evidence ? loudnessRange([evidence.bypassed.loudness, evidence.processed.loudness]) : null),
    [evidence],
  )
  const paths = useMemo(() => {
    if (!evidence || !range) return null
    const path = (side: 'bypassed' | 'processed') =>
      loudnessPath(evidence[side].loudness, view, sampleRate, width, height, range)
    return { bypassed: path('bypassed'), processed: path('processed') }
  }, [evidence, range, view, sampleRate, width, height])
  const sides = sideWords(useListen((state) => state.scope))
  const missing = evidence && whyNoLoudness(evidence)
  const reach = range && `${plain(range.lowLufs, 0)} to ${plain(range.highLufs, 0)} LUFS`
  const scale: LaneScale | undefined =
    range && !missing
      ? { top: `${plain(range.highLufs, 0)} LUFS`, bottom: plain(range.lowLufs, 0) }
      : undefined
  const label = <LoudnessLabel figures={missing ?? ''} />
  const sentence = !evidence
    ? 'Short-term loudness along the take, not drawn yet.'
    : missing
      ? `Short-term loudness along the take: ${missing}.`
      : `Short-term loudness along the take, from ${reach}. Max ${lufs(evidence.bypassed.measures.shortTermMaxLufs)} ${sides.bypassed}, ${lufs(evidence.processed.measures.shortTermMaxLufs)} ${sides.processed}.`
  return (
    <Lane label={label} scale={scale} sentence={sentence} width={width} height={height}>
      <line className={styles.hairline} x1="0" x2={width} y1={height - 0.5} y2={height - 0.5} />
      {paths && <path className={styles.bypassed} d={paths.bypassed} />}
      {paths && <path className={styles.processed} d={paths.processed} />}
    </Lane>
  )
})

/** The window of short-term loudness, seconds (EBU Tech 3341). */
const WINDOW_SECONDS = 3

/** Why neither side has any short-term loudness; null where one has. */
function whyNoLoudness({ bypassed, processed }: Evidence): string | null {
  const { hopSeconds, shortTermLufs } = bypassed.loudness
  if (bypassed.measures.shortTermMaxLufs !== null || processed.measures.shortTermMaxLufs !== null) return null
  const isShort = (shortTermLufs.length - 1) * hopSeconds < WINDOW_SECONDS
  return isShort ? 'too short to measure' : 'too quiet to measure'
}

function lufs(value: number | null): string {
  return value === null ? 'not measurable' : `${plain(value, 1)} LUFS`
}
