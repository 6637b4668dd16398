import { frameCount, type Sound } from '../../../core'
import { SHORTEST_LOOP_SECONDS } from '../../../session/listening/loop'
import { printedKey } from '../../actions/key-table'
import { useApp, useListen } from '../../context/app-context'
import { withEnd, withStart } from './fitted-loop'
import { TimeField } from './time-field'
import styles from './times-panel.module.css'
import { behindEnd } from './typed-times'

interface TimesPanelProps {
  readonly sound: Sound
  readonly id: string
}

/** Position and loop, typed. */
export function TimesPanel({ sound, id }: TimesPanelProps) {
  const { listening } = useApp()
  const { sampleRate } = sound
  const frames = frameCount(sound)
  const loop = useListen((state) => state.loop)
  const position = useListen(({ playing, positionFrame }) => {
    // Calm enough to be read while it plays.
    const steps = playing ? 10 : 100
    return Math.round((positionFrame / sampleRate) * steps) / steps
  })
  const refusal = (seconds: number) => behindEnd(seconds, frames / sampleRate)
  const bounds = { frames, shortest: Math.ceil(SHORTEST_LOOP_SECONDS * sampleRate) }
  // Without a loop the fields show the whole take, so that is what one end of it is typed into.
  const range = loop ?? { from: 0, to: frames }
  return (
    <div id={id} className={styles.panel}>
      <TimeField
        label="Position"
        seconds={position}
        refusal={refusal}
        onChange={(seconds) => listening.seek(seconds * sampleRate)}
      />
      <fieldset className={styles.group} aria-label="Loop">
        <TimeField
          label="Loop from"
          seconds={range.from / sampleRate}
          refusal={refusal}
          onChange={(seconds) => listening.setLoop(withStart(range, seconds * sampleRate, bounds))}
        />
        <TimeField
          label="to"
          seconds={range.to / sampleRate}
          refusal={refusal}
          onChange={(seconds) => listening.setLoop(withEnd(range, seconds * sampleRate, bounds))}
        />
        <button
          type="button"
          title={`Starts the loop at the position: key ${printedKey('loop-from')}`}
          onClick={() => listening.setLoopEnd('from')}
        >
          Start loop here
        </button>
        <button
          type="button"
          title={`Ends the loop at the position: key ${printedKey('loop-to')}`}
          onClick={() => listening.setLoopEnd('to')}
        >
          End loop here
        </button>
        <button type="button" disabled={!loop} onClick={() => listening.setLoop(null)}>
          Clear loop
        </button>
      </fieldset>
    </div>
  )
}
