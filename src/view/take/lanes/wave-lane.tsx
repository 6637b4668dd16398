import { memo, useId, useMemo } from 'react'
import { dbToGain, plain } from '../../../core'
import { sideWords } from '../../../session/comparison/side-words'
import { type Evidence, useListen, useTake } from '../../context/app-context'
import { usePendingWords } from '../../context/use-pending-words'
import type { TimeView } from '../time/time-view'
import { Lane } from './lane'
import { laneHeights } from './lane-heights'
import { WaveLabel } from './lane-labels'
import { fullHeightDbfs, waveColumns, wavePath } from './wave-geometry'
import styles from './wave-lane.module.css'

/** The outline is drawn more coarsely, so that its dashes can be told apart. */
const OUTLINE_COLUMN_PX = 3

interface WaveLaneProps {
  readonly evidence: Evidence | null
  readonly view: TimeView
  readonly width: number
  /** Size of text against the usual: the lane grows with it. */
  readonly textScale: number
}

/** The wave without (outline) and with (filled). */
export const WaveLane = memo(({ evidence, view, width, textScale }: WaveLaneProps) => {
  const height = Math.round(laneHeights.wave * textScale)
  const bypassed = evidence?.bypassed.peaks
  const processed = evidence?.processed.peaks
  const takePeak = useTake(({ take }) => take?.measures?.truePeakDbtp ?? null)
  const bypassedDbtp = evidence?.bypassed.measures.truePeakDbtp
  const processedDbtp = evidence?.processed.measures.truePeakDbtp
  const heightDbfs = fullHeightDbfs([takePeak, bypassedDbtp, processedDbtp])
  const fullScale = dbToGain(heightDbfs)
  const sides = sideWords(useListen((state) => state.scope))
  const bypassedPath = useMemo(
    () => bypassed && wavePath(waveColumns(bypassed, view, width, OUTLINE_COLUMN_PX), height, fullScale),
    [bypassed, view, width, height, fullScale],
  )
  const processedPath = useMemo(
    () => processed && wavePath(waveColumns(processed, view, width, 1), height, fullScale),
    [processed, view, width, height, fullScale],
  )
  const pending = usePendingWords()
  const withinId = useId()
  const bypassedPeak = peakText(bypassedDbtp, pending)
  const processedPeak = peakText(processedDbtp, pending)
  const reach = `${plain(heightDbfs, 0)} dBFS`
  const sentence = evidence
    ? `The wave along the take; the lane reaches up to ${reach}. True peak ${bypassedPeak} ${sides.bypassed}, ${processedPeak} ${sides.processed}.`
    : 'The wave along the take, not drawn yet.'
  return (
    <Lane
      label={<WaveLabel sides={sides} bypassedPeak={bypassedPeak} processedPeak={processedPeak} />}
      scale={evidence ? { top: reach } : undefined}
      sentence={sentence}
      width={width}
      height={height}
    >
      <line className={styles.hairline} x1="0" x2={width} y1={height / 2} y2={height / 2} />
      {bypassedPath && <path className={styles.bypassed} d={bypassedPath} />}
      {processedPath && <path className={styles.processed} d={processedPath} />}
      {processedPath && bypassedPath && (
        <>
          <clipPath id={withinId}>
            <path d={processedPath} />
          </clipPath>
          <path className={styles.within} d={bypassedPath} clipPath={`url(#${withinId})`} />
        </>
      )}
    </Lane>
  )
})

function peakText(dbtp: number | null | undefined, pending: string): string {
  if (dbtp === undefined) return pending
  return dbtp === null ? 'silent' : `${plain(dbtp, 1)} dBTP`
}
