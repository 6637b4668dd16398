import { type CSSProperties, memo, useMemo, useState } from 'react'
import { plain, stageDefinitions } from '../../../core'
import { useEvidence, useStageColour } from '../../context/app-context'
import { usePendingWords } from '../../context/use-pending-words'
import { useLook } from '../../hooks/use-look'
import { inWords } from '../../words/in-words'
import { printTime } from '../../words/time-text'
import { LaneRow, MaximumMark } from '../lanes/lane'
import { GainReductionLabel, idleWords } from '../lanes/lane-labels'
import type { LaneStage } from '../lanes/lane-plan'
import { LABEL_PX } from '../lanes/scale-ticks'
import { type TimeView, xOfFrame } from '../time/time-view'
import { traceRangeDb } from './trace-geometry'
import { TracePicture } from './trace-picture'
import { deepestOf, traceTicks, traceY } from './trace-scale'

interface TraceLaneProps extends LaneStage {
  readonly view: TimeView
  readonly sampleRate: number
  readonly width: number
  readonly height: number
  /** Size of text against the usual. */
  readonly textScale: number
}

/** Gain reduction of one stage along the take, hanging down from 0 dB. No setting of the stage draws it anew. */
export const TraceLane = memo((props: TraceLaneProps) => {
  const { id, kind, on, number, heard, view, sampleRate, width, height, textScale } = props
  const name = stageDefinitions[kind].label
  const [rangeDb, setRangeDb] = useState(() => traceRangeDb(0))
  const look = useLook()
  const works = on && heard
  const found = useEvidence(({ evidence }) => evidence?.stages.get(id))
  const isLive = useEvidence(({ liveTraces }) => liveTraces.has(id))
  const trace = works ? found?.trace : null
  const reduction = works ? found?.reduction : null
  const deepest = useMemo(() => (trace ? deepestOf(trace) : null), [trace])
  const isDrawn = works && (isLive || trace)
  const pending = usePendingWords()
  const figures = reduction ? `max ${inWords(reduction.maxDb)} dB` : idleWords(on, heard, pending)
  const colour: CSSProperties = { color: useStageColour(id) }
  const ticks = useMemo(
    () => (isDrawn ? traceTicks(rangeDb, height, LABEL_PX * textScale) : []),
    [isDrawn, rangeDb, height, textScale],
  )
  const at = deepest ? ` at ${printTime(deepest.frame / sampleRate)}` : ''
  const sentence = reduction
    ? `Gain reduction of stage ${number}, ${name}: ${figures}${at}, median ${inWords(reduction.medianDb)} dB; the lane reaches down to ${plain(-rangeDb, 0)} dB.`
    : `Gain reduction of stage ${number}, ${name}: ${works ? 'not drawn yet' : figures}.`
  return (
    <LaneRow
      label={<GainReductionLabel stageId={id} kind={kind} on={on} number={number} figures={figures} />}
      ticks={ticks}
    >
      <TracePicture
        key={look}
        stageId={id}
        works={works}
        view={view}
        width={width}
        height={height}
        sentence={sentence}
        style={colour}
        onRange={setRangeDb}
      />
      {/* While a control moves the deepest is not known. */}
      {deepest && !isLive && (
        <MaximumMark
          x={xOfFrame(view, deepest.frame, width)}
          y={traceY(deepest.gainDb, rangeDb, height)}
          width={width}
          style={colour}
        />
      )}
    </LaneRow>
  )
})
