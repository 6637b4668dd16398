import { useMemo } from 'react'
import { useChain, useEvidence, useListen, useView } from '../context/app-context'
import { useSize } from '../hooks/use-size'
import { useTextScale } from '../hooks/use-text-scale'
import { axisHeight, laneHeights, roomFor } from './lanes/lane-heights'
import { lanePlan, type PlannedLane } from './lanes/lane-plan'
import { LoudnessLane } from './lanes/loudness-lane'
import { TimeAxis } from './lanes/time-axis'
import { WaveLane } from './lanes/wave-lane'
import styles from './lanes-stack.module.css'
import { LevelLane } from './level/level-lane'
import { MarksRow } from './marks/marks-row'
import { LazySpectrogramLane } from './spectrogram/lazy-spectrogram-lane'
import type { TimeView } from './time/time-view'
import { TraceLane } from './trace/trace-lane'

interface LanesStackProps {
  readonly view: TimeView
  readonly sampleRate: number
  /** Of the pictures, CSS pixels. */
  readonly width: number
}

/** All that a lane is drawn with. */
interface LaneProps extends LanesStackProps {
  readonly height: number
  readonly textScale: number
}

/** The lanes of the take and their time axis, which share the height that there is. */
export function LanesStack({ view, sampleRate, width }: LanesStackProps) {
  const current = useChain((state) => state.chain)
  const scope = useListen((state) => state.scope)
  // The chain that the figures are of: the current one, or a stored version.
  const chain = scope.kind === 'snapshots' ? (scope.b?.chain ?? current) : current
  const listeningPoint = useListen((state) => state.listeningPoint)
  const hasSpectrogram = useView((state) => state.spectrogram)
  const selected = useChain((state) => state.chain.stages.find(({ id }) => id === state.selectedId)) ?? null
  const plan = useMemo(
    () => lanePlan(chain, listeningPoint, hasSpectrogram, selected),
    [chain, listeningPoint, hasSpectrogram, selected],
  )
  const textScale = useTextScale()
  const [stack, { height }] = useSize()
  const kinds = plan.map(({ kind }) => kind)
  const heights = laneHeights(height, kinds, textScale)
  return (
    <div ref={stack} className={styles.stack} style={roomFor(kinds, textScale)}>
      <div className={styles.lanes}>
        {plan.map((lane, i) => (
          <Lane
            key={lane.kind === 'gainReduction' ? lane.stage.id : lane.kind}
            lane={lane}
            props={{ view, sampleRate, width, height: heights[i] ?? 0, textScale }}
          />
        ))}
        <TimeAxis
          view={view}
          sampleRate={sampleRate}
          width={width}
          height={axisHeight(textScale)}
          textScale={textScale}
        />
      </div>
    </div>
  )
}

function Lane({ lane, props }: { lane: PlannedLane; props: LaneProps }) {
  const evidence = useEvidence((state) => state.evidence)
  switch (lane.kind) {
    case 'marks':
      return <MarksRow {...props} />
    case 'spectrogram':
      return <LazySpectrogramLane {...props} />
    case 'wave':
      return <WaveLane evidence={evidence} {...props} />
    case 'gainReduction':
      return <TraceLane {...lane.stage} {...props} />
    case 'level':
      return <LevelLane {...props} />
    case 'loudness':
      return <LoudnessLane evidence={evidence} {...props} />
  }
}
