import { type CSSProperties, memo, useMemo } from 'react'
import { plain, type StageDoc, stageDefinitions } from '../../core'
import { useEvidence, useStageColour } from '../bench-context'
import type { StageEvidence } from '../evidence-types'
import { usePendingWords } from '../numbers/pending-words'
import { Lane } from './lane'
import styles from './take.module.css'
import type { TimeView } from './time-view'
import { tracePaths, tracePoints, traceRangeDb } from './trace-geometry'

const HEIGHT = 32
const COLUMN_PX = 2

interface TraceLaneProps {
  readonly stage: StageDoc
  /** Its number in the chain, from 1. */
  readonly number: number
  /** Whether it stands before the ear. */
  readonly heard: boolean
  readonly found: StageEvidence | undefined
  readonly view: TimeView
  readonly width: number
  /** Size of text against the usual: the lane grows with it. */
  readonly textScale: number
}

/** What one stage held back along the take, hanging down from 0 dB. */
export const TraceLane = memo(({ stage, number, heard, found, view, width, textScale }: TraceLaneProps) => {
  const height = Math.round(HEIGHT * textScale)
  const name = stageDefinitions[stage.kind].label
  const live = useEvidence((state) => state.liveTraces.get(stage.id))
  const works = stage.on && heard
  const trace = works ? (live ?? found?.trace ?? null) : null
  const reduction = works ? (found?.reduction ?? null) : null
  const points = useMemo(
    () => (trace ? tracePoints(trace, view, width, COLUMN_PX) : []),
    [trace, view, width],
  )
  // Deeper than the figures say while a control moves: they follow later.
  const seenMostDb = points.reduce((most, { gainDb }) => Math.max(most, -gainDb), 0)
  const rangeDb = traceRangeDb(Math.max(reduction?.mostDb ?? 0, seenMostDb))
  const paths = useMemo(() => trace && tracePaths(points, height, rangeDb), [trace, points, height, rangeDb])
  const pending = usePendingWords()
  const figures = reduction
    ? `most ${plain(reduction.mostDb, 1)}, typical ${plain(reduction.typicalDb, 1)} dB`
    : idleWords(stage.on, heard, pending)
  const colour: CSSProperties = { color: useStageColour(stage.id) }
  const label = (
    <>
      <span>
        <strong style={colour}>{number}</strong> {name}
        {trace && <span className={styles.depth}> to {plain(-rangeDb, 0)} dB</span>}
      </span>
      <span>{figures}</span>
    </>
  )
  const sentence = reduction
    ? `Gain reduction of stage ${number}, ${name}: ${figures}; the lane reaches down to ${plain(-rangeDb, 0)} dB.`
    : `Gain reduction of stage ${number}, ${name}: ${works ? 'not drawn yet' : figures}.`
  return (
    <Lane label={label} sentence={sentence} width={width} height={height}>
      <g style={colour}>
        <line
          className={works ? styles.traceZero : styles.traceZeroOff}
          x1="0"
          x2={width}
          y1="0.5"
          y2="0.5"
        />
        {paths && <path className={styles.traceArea} d={paths.area} />}
        {paths && <path className={styles.traceEdge} d={paths.edge} />}
      </g>
    </Lane>
  )
})

/** Why there are no figures. */
function idleWords(on: boolean, heard: boolean, pending: string): string {
  if (!on) return 'off'
  return heard ? pending : 'after the ear, not heard'
}
