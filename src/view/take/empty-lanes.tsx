import { stageDefinitions } from '../../core'
import { sideWords } from '../../session/comparison/side-words'
import { useChain, useEvidence, useListen } from '../context/app-context'
import { usePendingWords } from '../context/use-pending-words'
import { useTextScale } from '../hooks/use-text-scale'
import { LaneRow } from './lanes/lane'
import { laneHeights } from './lanes/lane-heights'
import { GainReductionLabel, idleWords, LoudnessLabel, WaveLabel } from './lanes/lane-labels'
import styles from './take.module.css'

/** The lanes before there is a take, labelled and as high as they will be, so that nothing moves when it comes. */
export function EmptyLanes() {
  const stages = useChain(({ chain }) => chain.stages)
  const sides = sideWords(useListen((state) => state.scope))
  const pending = usePendingWords()
  const measuring = useEvidence(({ working }) => working !== null)
  return (
    <div className={styles.lanes} aria-busy={measuring}>
      <LaneRow label={<WaveLabel sides={sides} bypassedPeak={pending} processedPeak={pending} />}>
        <Room height={laneHeights.wave} />
      </LaneRow>
      {stages.map(({ id, kind, on }, index) =>
        stageDefinitions[kind].reducesGain ? (
          <LaneRow
            key={id}
            label={
              <GainReductionLabel
                stageId={id}
                kind={kind}
                number={index + 1}
                figures={idleWords(on, true, pending)}
              />
            }
          >
            <Room height={laneHeights.gainReduction} />
          </LaneRow>
        ) : null,
      )}
      <LaneRow label={<LoudnessLabel figures="" />}>
        <Room height={laneHeights.loudness} />
      </LaneRow>
      <LaneRow label={null}>
        <Room height={laneHeights.axis} />
      </LaneRow>
    </div>
  )
}

function Room({ height }: { height: number }) {
  return <div style={{ height: Math.round(height * useTextScale()) }} />
}
