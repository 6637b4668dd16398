import { type CSSProperties, memo, useState } from 'react'
import { plain, type StageDoc, stageDefinitions } from '../../../core'
import { useEvidence, useStageColour } from '../../context/app-context'
import { usePendingWords } from '../../context/use-pending-words'
import { useLook } from '../../hooks/use-look'
import { inWords } from '../../words/in-words'
import { LaneRow } from '../lanes/lane'
import { laneHeights } from '../lanes/lane-heights'
import { GainReductionLabel, idleWords } from '../lanes/lane-labels'
import type { TimeView } from '../time/time-view'
import { traceRangeDb } from './trace-geometry'
import { TracePicture } from './trace-picture'

interface TraceLaneProps {
  readonly stageId: string
  readonly kind: StageDoc['kind']
  readonly on: boolean
  /** Its number in the chain, from 1. */
  readonly number: number
  /** Whether it comes before the listening point. */
  readonly heard: boolean
  readonly view: TimeView
  readonly width: number
  /** Size of text against the usual: the lane grows with it. */
  readonly textScale: number
}

/** Gain reduction of one stage along the take, hanging down from 0 dB. No setting of the stage draws it anew. */
export const TraceLane = memo(
  ({ stageId, kind, on, number, heard, view, width, textScale }: TraceLaneProps) => {
    const name = stageDefinitions[kind].label
    const [rangeDb, setRangeDb] = useState(() => traceRangeDb(0))
    const look = useLook()
    const works = on && heard
    const found = useEvidence(({ evidence }) => evidence?.stages.get(stageId))
    const isDrawn = useEvidence(({ liveTraces }) => liveTraces.has(stageId)) || found?.trace
    const reduction = works ? found?.reduction : null
    const pending = usePendingWords()
    const figures = reduction
      ? `max ${inWords(reduction.maxDb)} dB, median ${inWords(reduction.medianDb)} dB`
      : idleWords(on, heard, pending)
    const colour: CSSProperties = { color: useStageColour(stageId) }
    const label = <GainReductionLabel stageId={stageId} kind={kind} number={number} figures={figures} />
    const sentence = reduction
      ? `Gain reduction of stage ${number}, ${name}: ${figures}; the lane reaches down to ${plain(-rangeDb, 0)} dB.`
      : `Gain reduction of stage ${number}, ${name}: ${works ? 'not drawn yet' : figures}.`
    return (
      <LaneRow label={label} scale={works && isDrawn ? { bottom: `${plain(-rangeDb, 0)} dB` } : undefined}>
        <TracePicture
          key={look}
          stageId={stageId}
          works={works}
          view={view}
          width={width}
          height={Math.round(laneHeights.gainReduction * textScale)}
          sentence={sentence}
          style={colour}
          onRange={setRangeDb}
        />
      </LaneRow>
    )
  },
)
