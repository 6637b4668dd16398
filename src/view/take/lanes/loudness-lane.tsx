import { memo, useMemo } from 'react'
import { plain } from '../../../core'
import { sideWords } from '../../../session/comparison/side-words'
import { type Evidence, useListen } from '../../context/app-context'
import type { TimeView } from '../time/time-view'
import { LanePicture, LaneRow } from './lane'
import { LoudnessLabel } from './lane-labels'
import { loudnessPath, loudnessRange, loudnessTicks, WINDOW_SECONDS } from './loudness-geometry'
import styles from './loudness-lane.module.css'
import { LABEL_PX } from './scale-ticks'

interface LoudnessLaneProps {
  readonly evidence: Evidence | null
  readonly view: TimeView
  readonly sampleRate: number
  readonly width: number
  readonly height: number
  /** Size of text against the usual. */
  readonly textScale: number
}

/** Short-term loudness along the take, of what is heard solid and in front, of the other side dashed. */
export const LoudnessLane = memo((props: LoudnessLaneProps) => {
  const { evidence, view, sampleRate, width, height, textScale } = props
  const side = useListen((state) => state.side)
  const range = useMemo(
    () => (evidence ? loudnessRange([evidence.bypassed.loudness, evidence.processed.loudness]) : null),
    [evidence],
  )
  const ticks = useMemo(
    () => (range ? loudnessTicks(range, height, LABEL_PX * textScale) : []),
    [range, height, textScale],
  )
  const paths = useMemo(() => {
    if (!evidence || !range) return null
    const path = (of: 'bypassed' | 'processed') =>
      loudnessPath(evidence[of].loudness, view, sampleRate, width, height, range)
    return { bypassed: path('bypassed'), processed: path('processed') }
  }, [evidence, range, view, sampleRate, width, height])
  const sides = sideWords(useListen((state) => state.scope))
  const missing = evidence && whyNoLoudness(evidence)
  const sentence =
    !evidence || !range
      ? 'Short-term loudness along the take, not drawn yet.'
      : missing
        ? `Short-term loudness along the take: ${missing}.`
        : `Short-term loudness along the take, from ${plain(range.lowLufs, 0)} to ${plain(range.highLufs, 0)} LUFS. Max ${lufs(evidence.bypassed.measures.shortTermMaxLufs)} ${sides.bypassed}, ${lufs(evidence.processed.measures.shortTermMaxLufs)} ${sides.processed}.`
  return (
    <LaneRow label={<LoudnessLabel figures={missing} />} ticks={missing ? undefined : ticks}>
      <LanePicture sentence={sentence} width={width} height={height}>
        {paths && (
          <path className={styles.ghost} d={paths[side === 'processed' ? 'bypassed' : 'processed']} />
        )}
        {paths && <path className={styles.ink} d={paths[side]} />}
      </LanePicture>
    </LaneRow>
  )
})

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
