import { useMemo } from 'react'
import {
  type DetectorOf,
  detectorOf,
  frequency,
  plain,
  plainInSentence,
  type StageDoc,
  shareAbove,
  stageDefinitions,
} from '../../../core'
import { useChain, useDetail, useStageColour } from '../../context/app-context'
import { StageGlyph } from '../../controls/stage-glyph'
import { useLook } from '../../hooks/use-look'
import { LaneRow } from '../lanes/lane'
import { LABEL_PX } from '../lanes/scale-ticks'
import type { TimeView } from '../time/time-view'
import { depthOf, highestLevel, levelRange, levelTicks } from './level-geometry'
import styles from './level-lane.module.css'
import { LevelPicture } from './level-picture'
import { ThresholdLine } from './threshold-line'

interface LevelLaneProps {
  readonly view: TimeView
  readonly width: number
  readonly height: number
  /** Size of text against the usual. */
  readonly textScale: number
}

/** The level that the detector of the selected stage sees along the take, against its threshold; none without detector. */
export function LevelLane(props: LevelLaneProps) {
  const stages = useChain((state) => state.chain.stages)
  const selectedId = useChain((state) => state.selectedId)
  const index = stages.findIndex(({ id }) => id === selectedId)
  const stage = stages[index]
  const detector = stage && detectorOf(stage)
  return stage && detector ? <StageLevel {...props} stage={stage} index={index} detector={detector} /> : null
}

interface StageLevelProps extends LevelLaneProps {
  readonly stage: StageDoc
  readonly index: number
  readonly detector: DetectorOf
}

function StageLevel({ stage, index, detector, view, width, height, textScale }: StageLevelProps) {
  const { threshold, crossover } = detector
  const colour = useStageColour(stage.id)
  const look = useLook()
  const level = useDetail(({ stageId, detail }) => (stageId === stage.id ? detail?.level : null)) ?? null
  const highest = useMemo(() => (level ? highestLevel(level) : Number.NEGATIVE_INFINITY), [level])
  const { highDbfs, lowDbfs } = levelRange(highest, threshold.value)
  // The same object as long as it says the same, so that the picture is not drawn anew.
  const range = useMemo(() => ({ highDbfs, lowDbfs }), [highDbfs, lowDbfs])
  const ticks = useMemo(() => levelTicks(range, height, LABEL_PX * textScale), [range, height, textScale])
  const share = level ? `${plainInSentence(100 * shareAbove(level, threshold.value), 0)} %` : null
  const name = `${stageDefinitions[stage.kind].label} ${index + 1}`
  const where = crossover ? ` above ${frequency(crossover.value)}` : ''
  const howOften = share ? `${share} of the time it is` : 'not drawn yet, nor how often it is'
  return (
    <LaneRow
      label={
        <LevelLabel colour={colour} number={index + 1} on={stage.on} figures={share && `${share} above`} />
      }
      ticks={ticks}
    >
      <div
        className={styles.level}
        style={{
          '--threshold': `${100 * depthOf(threshold.value, range)}%`,
          '--stage': colour,
          height,
        }}
        aria-busy={level === null}
      >
        <LevelPicture
          key={`${look} ${colour}`}
          level={level}
          view={view}
          range={range}
          width={width}
          height={height}
          sentence={`Level${where} that ${name} detects along the take, from ${plain(lowDbfs, 0)} to ${plain(highDbfs, 0)} dBFS: ${howOften} above the threshold of ${plainInSentence(threshold.value, 1)} dBFS.`}
        />
        {level && (
          <ThresholdLine stage={stage} index={index} threshold={threshold} range={range} height={height} />
        )}
      </div>
    </LaneRow>
  )
}

/** So that the name stays where it is when the figure comes. */
const KEEPS_ITS_LINE = '\u00a0'

interface LevelLabelProps {
  readonly colour: string
  /** The stage's number in the chain, from 1. */
  readonly number: number
  readonly on: boolean
  readonly figures: string | null
}

function LevelLabel({ colour, number, on, figures }: LevelLabelProps) {
  return (
    <>
      <span className={styles.glyph}>
        <StageGlyph colour={colour} index={number - 1} on={on} />
      </span>
      <span className={styles.name}>Level, dBFS</span>
      <span className={styles.figures} data-figure>
        {figures ?? KEEPS_ITS_LINE}
      </span>
    </>
  )
}
