import { useEffect, useRef } from 'react'
import { stageDefinitions } from '../../core'
import { useBench, useChain, useEvidence, useListen, useTake } from '../bench-context'
import { earIndexOf } from '../path/ear-place'
import { LoudnessLane } from './loudness-lane'
import { NoTake } from './no-take'
import { Playhead } from './playhead'
import { SeekSurface } from './seek-surface'
import styles from './take.module.css'
import { TimeAxis } from './time-axis'
import { TimeRow } from './time-row'
import row from './time-row.module.css'
import { TraceLane } from './trace-lane'
import { useTimeView } from './use-time-view'
import { useWidth } from './use-width'
import { WaveLane } from './wave-lane'
import { WorkingNote } from './working-note'

/** The take along time: wave, gain reduction of each stage, loudness; without and with. */
export function TheTake() {
  const bench = useBench()
  const sound = useTake(({ take }) => take?.sound ?? null)
  const hasNone = useTake(({ take, loading }) => take === null && loading === null)
  const chain = useChain((state) => state.chain)
  const evidence = useEvidence((state) => state.evidence)
  const earIndex = earIndexOf(
    chain.stages,
    useListen((state) => state.earAfterId),
  )
  const time = useTimeView(sound)
  const pictures = useRef<HTMLDivElement>(null)
  const surface = useRef<HTMLDivElement>(null)
  const width = useWidth(pictures)
  const sampleRate = sound?.sampleRate ?? 1
  const lanes = { view: time.view, width }
  useEffect(() => {
    bench.evidence.setState({ seen: time.isWhole ? null : time.view })
  }, [bench, time])
  const reducing = chain.stages
    .map((stage, index) => ({ stage, number: index + 1 }))
    .filter(({ stage }) => stageDefinitions[stage.kind].reducesGain)
  return (
    <section className={styles.take} aria-labelledby="the-take">
      <div className={styles.head}>
        <h2 id="the-take">The take</h2>
        <p className={styles.rule}>dashed without, solid with</p>
        <WorkingNote />
      </div>
      {hasNone && <NoTake />}
      <div className={styles.lanes} hidden={hasNone}>
        <div ref={pictures} className={styles.over}>
          {sound && <SeekSurface sound={sound} time={time} width={width} surface={surface} />}
        </div>
        <WaveLane evidence={evidence} {...lanes} />
        {reducing.map(({ stage, number }) => (
          <TraceLane
            key={stage.id}
            stage={stage}
            number={number}
            heard={number - 1 <= earIndex}
            found={evidence?.stages.get(stage.id)}
            {...lanes}
          />
        ))}
        <LoudnessLane evidence={evidence} sampleRate={sampleRate} {...lanes} />
        <TimeAxis sampleRate={sound?.sampleRate ?? null} {...lanes} />
        <div className={`${styles.over} ${styles.untouched}`}>
          {sound && <Playhead time={time} width={width} />}
        </div>
      </div>
      <div className={row.row}>{sound && <TimeRow sound={sound} time={time} />}</div>
    </section>
  )
}
