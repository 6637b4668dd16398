import { useMemo } from 'react'
import {
  type DetectorOf,
  detectorOf,
  plain,
  plainInSentence,
  type StageDoc,
  shareAbove,
  stageDefinitions,
} from '../../../core'
import { useChain, useDetail, useStageColour } from '../../context/app-context'
import { useLook } from '../../hooks/use-look'
import { LaneRow } from '../lanes/lane'
import type { TimeView } from '../time/time-view'
import { depthOf, highestLevel, levelRange } from './level-geometry'
import styles from './level-lane.module.css'
import { LevelPicture } from './level-picture'
import { ThresholdLine } from './threshold-line'

interface LevelLaneProps {
  readonly view: TimeView
  readonly width: number
  readonly height: number
  /** Size of text against the usual: `height` has grown with it. */
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

function StageLevel({ stage, index, detector, view, width, height }: StageLevelProps) {
  const { threshold, crossover } = detector
  const colour = useStageColour(stage.id)
  const look = useLook()
  const level = useDetail(({ stageId, detail }) => (stageId === stage.id ? detail?.level : null)) ?? null
  const highest = useMemo(() => (level ? highestLevel(level) : Number.NEGATIVE_INFINITY), [level])
  const { highDbfs, lowDbfs } = levelRange(highest, threshold.value)
  // The same object as long as it says the same, so that the picture is not drawn anew.
  const range = useMemo(() => ({ highDbfs, lowDbfs }), [highDbfs, lowDbfs])
  const share = level ? `${plainInSentence(100 * shareAbove(level, threshold.value), 0)} %` : null
  const { label } = stageDefinitions[stage.kind]
  const place = { '--threshold': `${100 * depthOf(threshold.value, range)}%`, '--stage': colour, height }
  return (
    <LaneRow
      label={
        <>
          <span>
            <strong style={{ color: colour }}>{index + 1}</strong> Level
          </span>
          {share && <span>{share} above</span>}
        </>
      }
      scale={level ? { top: `${plain(highDbfs, 0)} dBFS`, bottom: plain(lowDbfs, 0) } : undefined}
    >
      <div className={styles.level} style={place} aria-busy={level === null}>
        <LevelPicture
          key={`${look} ${colour}`}
          level={level}
          view={view}
          range={range}
          width={width}
          height={height}
          sentence={`Level ${crossover ? 'above the crossover' : ''} that ${label} ${index + 1} detects along the take, from ${plain(lowDbfs, 0)} to ${plain(highDbfs, 0)} dBFS: ${share ? `${share} of the time` : 'not known yet how often'} above the threshold of ${plainInSentence(threshold.value, 1)} dBFS.`}
        />
        <ThresholdLine stage={stage} index={index} threshold={threshold} range={range} height={height} />
      </div>
    </LaneRow>
  )
}
