import { memo, useMemo } from 'react'
import { dbToGain, gainToDb, plain } from '../../../core'
import { sideWords } from '../../../session/comparison/side-words'
import { type Evidence, useListen } from '../../context/app-context'
import { printTime } from '../../words/time-text'
import { useRangeSamples } from '../samples/use-range-samples'
import type { TimeView } from '../time/time-view'
import { LanePicture, LaneRow, MaximumMark } from './lane'
import { LABEL_PX } from './scale-ticks'
import { type SeenWave, useWave } from './use-wave'
import { sampleLines, wavePath } from './wave-geometry'
import styles from './wave-lane.module.css'
import { fullHeightDbfs, type Loudest, loudestOf, waveTicks, waveY } from './wave-scale'

interface WaveLaneProps {
  readonly evidence: Evidence | null
  readonly view: TimeView
  readonly sampleRate: number
  readonly width: number
  readonly height: number
  /** Size of text against the usual. */
  readonly textScale: number
}

/** The wave of both sides over one another: that which is heard as ink in front, the other as a ghost. */
export const WaveLane = memo(({ evidence, view, sampleRate, width, height, textScale }: WaveLaneProps) => {
  const side = useListen((state) => state.side)
  const samples = useRangeSamples(view, width)
  const bypassed = useWave(evidence?.bypassed.peaks, samples.bypassed, view, width)
  const processed = useWave(evidence?.processed.peaks, samples.processed, view, width)
  const heightDbfs = useMemo(
    () => fullHeightDbfs([bypassed.columns, processed.columns]),
    [bypassed, processed],
  )
  const fullScale = dbToGain(heightDbfs)
  const labelPx = LABEL_PX * textScale
  const ticks = useMemo(() => waveTicks(heightDbfs, height, labelPx), [heightDbfs, height, labelPx])
  const loudest = useMemo(
    () => ({ bypassed: loudestOf(bypassed.columns), processed: loudestOf(processed.columns) }),
    [bypassed, processed],
  )
  const sides = sideWords(useListen((state) => state.scope))
  const ghostSide = side === 'processed' ? 'bypassed' : 'processed'
  const waves = { bypassed, processed }
  const paths = {
    bypassed: useWavePath(bypassed, view, width, height, fullScale),
    processed: useWavePath(processed, view, width, height, fullScale),
  }
  const heard = loudest[side]
  const said = (of: 'bypassed' | 'processed') =>
    `${loudestWords(loudest[of], view, sampleRate, width)} ${sides[of]}`
  const sentence = evidence
    ? `The wave of what is seen of the take; the lane reaches up to ${plain(heightDbfs, 0)} dBFS. Peak ${said('bypassed')}, ${said('processed')}. In front: ${sides[side]}.`
    : 'The wave along the take, not drawn yet.'
  return (
    <LaneRow label={null} ticks={evidence ? ticks : undefined} unit={evidence ? 'dBFS' : undefined}>
      <LanePicture sentence={sentence} width={width} height={height}>
        <line className={styles.middle} x1="0" x2={width} y1={height / 2} y2={height / 2} />
        <path className={lookOf(waves[ghostSide], 'ghost')} d={paths[ghostSide]} />
        <path className={lookOf(waves[side], 'ink')} d={paths[side]} />
        {/* Again, so that it is seen where the ink covers it. */}
        <path className={styles.outline} d={paths[ghostSide]} />
      </LanePicture>
      {heard && (
        <MaximumMark
          x={heard.x}
          y={waveY(heard.value, fullScale, height)}
          width={width}
          label={plain(gainToDb(Math.abs(heard.value)), 1)}
        />
      )}
    </LaneRow>
  )
})

function useWavePath(
  { columns, samples }: SeenWave,
  view: TimeView,
  width: number,
  height: number,
  fullScale: number,
): string {
  return useMemo(
    () =>
      samples ? sampleLines(samples, view, width, height, fullScale) : wavePath(columns, height, fullScale),
    [columns, samples, view, width, height, fullScale],
  )
}

function lookOf({ samples }: SeenWave, look: 'ghost' | 'ink'): string | undefined {
  if (look === 'ink') return samples ? styles.inkLine : styles.ink
  return samples ? styles.outline : styles.ghost
}

/** The sample furthest from 0 of what is seen, in words. */
function loudestWords(
  loudest: Loudest | null,
  { from, to }: TimeView,
  sampleRate: number,
  width: number,
): string {
  if (!loudest) return 'silent'
  const seconds = (from + (loudest.x / Math.max(1, width)) * (to - from)) / sampleRate
  return `${plain(gainToDb(Math.abs(loudest.value)), 1)} dBFS at ${printTime(seconds)}`
}
