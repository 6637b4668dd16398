import { useRef } from 'react'
import { listeningPointIndexOf, stageDefinitions } from '../../core'
import { sideWords } from '../../session/comparison/side-words'
import { useChain, useEvidence, useListen, useTake } from '../context/app-context'
import { useTextScale } from '../hooks/use-text-scale'
import { useWidth } from '../hooks/use-width'
import { SideLegend } from '../plot/side-legend'
import { LoudnessLane } from './lanes/loudness-lane'
import { TimeAxis } from './lanes/time-axis'
import { WaveLane } from './lanes/wave-lane'
import { NoTake } from './no-take'
import { Playhead } from './playhead'
import { SeekSurface } from './seek-surface'
import styles from './take.module.css'
import { TimeRow } from './time/time-row'
import type { TimeView } from './time/time-view'
import { useTimeView } from './time/use-time-view'
import { TraceLane } from './trace/trace-lane'
import { WorkingNote } from './working-note'

/** The take along time: wave, gain reduction of each stage, loudness; without and with. */
export function TheTake() {
  const sound = useTake(({ take }) => take?.sound ?? null)
  const hasNone = useTake(({ take, loading }) => take === null && loading === null)
  const evidence = useEvidence((state) => state.evidence)
  const measuring = useEvidence((state) => state.working !== null)
  const time = useTimeView(sound)
  const surface = useRef<HTMLDivElement>(null)
  const [pictures, width] = useWidth()
  const scope = useListen((state) => state.scope)
  const sides = sideWords(scope)
  const sampleRate = sound?.sampleRate ?? 1
  const textScale = useTextScale()
  const lanes = { view: time.view, width, textScale }
  return (
    <section className={styles.take} aria-labelledby="the-take">
      <div className={styles.head}>
        <h2 id="the-take">The take</h2>
        <p className={scope.kind === 'snapshots' ? styles.longRule : styles.rule}>
          <SideLegend sides={sides} />
          {scope.kind === 'snapshots' && ` lanes: ${sides.processed}`}
        </p>
        <WorkingNote />
      </div>
      {hasNone && <NoTake />}
      <div className={styles.lanes} hidden={hasNone} aria-busy={measuring}>
        <div ref={pictures} className={styles.over}>
          {sound && <SeekSurface sound={sound} time={time} width={width} surface={surface} />}
        </div>
        <WaveLane evidence={evidence} {...lanes} />
        <TraceLanes {...lanes} />
        <LoudnessLane evidence={evidence} sampleRate={sampleRate} {...lanes} />
        <TimeAxis sampleRate={sound?.sampleRate ?? null} {...lanes} />
        <div className={`${styles.over} ${styles.untouched}`}>
          {sound && <Playhead time={time} width={width} />}
        </div>
      </div>
      <TimeRow sound={sound} time={time} />
    </section>
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
