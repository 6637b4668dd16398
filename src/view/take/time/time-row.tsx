import { frameCount, type Sound } from '../../../core'
import { SHORTEST_LOOP_SECONDS } from '../../../session/listening/loop'
import { printedKey } from '../../actions/key-table'
import { useApp, useListen } from '../../context/app-context'
import { ZOOM_STEP } from './seek-keys'
import { TimeField } from './time-field'
import styles from './time-row.module.css'
import { loopFromRefusal, loopToRefusal, positionRefusal } from './typed-times'
import type { TimeViewControl } from './use-time-view'

interface TimeRowProps {
  readonly sound: Sound
  readonly time: TimeViewControl
}

/** Position, loop and zoom without dragging. */
export function TimeRow({ sound, time }: TimeRowProps) {
  const { listening } = useApp()
  const { sampleRate } = sound
  const frames = frameCount(sound)
  const loop = useListen((state) => state.loop)
  const position = useListen(({ playing, positionFrame }) => {
    // Calm enough to be read while it plays.
    const steps = playing ? 10 : 100
    return Math.round((positionFrame / sampleRate) * steps) / steps
  })

  // Without a loop the fields show the whole take, so that is what one end of it is typed into.
  const { from, to } = loop ?? { from: 0, to: frames }
  return (
    <>
      <TimeField
        label="Position"
        seconds={position}
        refusal={(seconds) => positionRefusal(seconds, frames / sampleRate)}
        onChange={(seconds) => listening.seek(seconds * sampleRate)}
      />
      <fieldset className={styles.group} aria-label="Loop">
        <TimeField
          label="Loop from"
          seconds={from / sampleRate}
          refusal={(seconds) => loopFromRefusal(seconds, to / sampleRate, SHORTEST_LOOP_SECONDS)}
          onChange={(seconds) => listening.setLoop({ from: seconds * sampleRate, to })}
        />
        <TimeField
          label="to"
          seconds={to / sampleRate}
          refusal={(seconds) =>
            loopToRefusal(seconds, from / sampleRate, frames / sampleRate, SHORTEST_LOOP_SECONDS)
          }
          onChange={(seconds) => listening.setLoop({ from, to: seconds * sampleRate })}
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
      <fieldset className={styles.group} aria-label="Zoom">
        <span>Zoom</span>
        <button
          type="button"
          aria-label="Zoom out"
          disabled={time.isWhole}
          onClick={() => time.zoom(1 / ZOOM_STEP)}
        >
          −
        </button>
        <button type="button" aria-label="Zoom in" onClick={() => time.zoom(ZOOM_STEP)}>
          +
        </button>
        <button type="button" disabled={!loop} onClick={() => loop && time.show(loop)}>
          to loop
        </button>
        <button type="button" disabled={time.isWhole} onClick={time.showAll}>
          whole take
        </button>
      </fieldset>
    </>
  )
}
