import { useRef } from 'react'
import { listeningPointIndexOf, type Sound, stageDefinitions } from '../../core'
import { useChain, useEvidence, useListen } from '../context/app-context'
import { useTextScale } from '../hooks/use-text-scale'
import { useWidth } from '../hooks/use-width'
import { LoudnessLane } from './lanes/loudness-lane'
import { TimeAxis } from './lanes/time-axis'
import { WaveLane } from './lanes/wave-lane'
import { LevelLane } from './level/level-lane'
import { Playhead } from './playhead'
import { SeekSurface } from './seek-surface'
import styles from './take.module.css'
import { TimeRow } from './time/time-row'
import type { TimeView } from './time/time-view'
import { useTimeView } from './time/use-time-view'
import { TraceLane } from './trace/trace-lane'

/** Wave, gain reduction of each stage and loudness along time, without and with; and ways to go along it. */
export function TakeLanes({ sound }: { sound: Sound }) {
  const evidence = useEvidence((state) => state.evidence)
  const measuring = useEvidence((state) => state.working !== null)
  const time = useTimeView(sound)
  const surface = useRef<HTMLDivElement>(null)
  const [pictures, width] = useWidth()
  const { sampleRate } = sound
  const textScale = useTextScale()
  const lanes = { view: time.view, width, textScale }
  return (
    <>
      <div className={styles.lanes} aria-busy={measuring}>
        <div ref={pictures} className={styles.over}>
          <SeekSurface sound={sound} time={time} width={width} surface={surface} />
        </div>
        <WaveLane evidence={evidence} {...lanes} />
        <TraceLanes {...lanes} />
        <LevelLane {...lanes} height={Math.round(48 * textScale)} />
        <LoudnessLane evidence={evidence} sampleRate={sampleRate} {...lanes} />
        <TimeAxis sampleRate={sampleRate} {...lanes} />
        <div className={`${styles.over} ${styles.untouched}`}>
          <Playhead time={time} width={width} />
        </div>
      </div>
      <div className={styles.row}>
        <TimeRow sound={sound} time={time} />
      </div>
    </>
  )
}

/** The lanes of the stages that reduce gain: all of the take's picture that a move of a control changes at once. */
function TraceLanes({ view, width, textScale }: { view: TimeView; width: number; textScale: number }) {
  const current = useChain((state) => state.chain)
  const scope = useListen((state) => state.scope)
  // The chain that the figures are of: the current one, or a stored version.
  const chain = scope.kind === 'snapshots' ? (scope.b ?? current) : current
  const listeningPointIndex = listeningPointIndexOf(
    chain.stages,
    useListen((state) => state.listeningPoint),
  )
  return chain.stages.map((stage, index) =>
    stageDefinitions[stage.kind].reducesGain ? (
      <TraceLane
        key={stage.id}
        stageId={stage.id}
        kind={stage.kind}
        on={stage.on}
        number={index + 1}
        heard={index <= listeningPointIndex}
        view={view}
        width={width}
        textScale={textScale}
      />
    ) : null,
  )
}
