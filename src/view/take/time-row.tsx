import { frameCount, type Sound } from '../../core'
import { useBench, useListen } from '../bench-context'
import { ZOOM_STEP } from './seek-keys'
import { TimeField } from './time-field'
import styles from './time-row.module.css'
import type { TimeViewControl } from './use-time-view'

/** Length of the loop that typing one of its ends makes where there is none, seconds. */
const NEW_LOOP_SECONDS = 4

/** Position, loop and zoom without dragging. */
export function TimeRow({ sound, time }: { sound: Sound; time: TimeViewControl }) {
  const { listening, listen } = useBench()
  const { sampleRate } = sound
  const frames = frameCount(sound)
  const loop = useListen((state) => state.loop)
  const position = useListen(({ playing, positionFrame }) => {
    // Calm enough to be read while it plays.
    const steps = playing ? 10 : 100
    return Math.round((positionFrame / sampleRate) * steps) / steps
  })

  const setFrom = (from: number) => {
    const to = loop && loop.to > from ? loop.to : from + NEW_LOOP_SECONDS * sampleRate
    listening.setLoop({ from, to })
  }
  const setTo = (to: number) => {
    const from = loop && loop.from < to ? loop.from : to - NEW_LOOP_SECONDS * sampleRate
    listening.setLoop({ from, to })
  }
  const here = () => listen.getState().positionFrame
  return (
    <>
      <TimeField
        label="Position"
        seconds={position}
        onChange={(seconds) => listening.seek(seconds * sampleRate)}
      />
      <fieldset className={styles.group} aria-label="Loop">
        <TimeField
          label="Loop from"
          seconds={(loop?.from ?? 0) / sampleRate}
          onChange={(seconds) => setFrom(seconds * sampleRate)}
        />
        <TimeField
          label="to"
          seconds={(loop?.to ?? frames) / sampleRate}
          onChange={(seconds) => setTo(seconds * sampleRate)}
        />
        <button type="button" title="The loop begins at the position" onClick={() => setFrom(here())}>
          from here
        </button>
        <button type="button" title="The loop ends at the position" onClick={() => setTo(here())}>
          to here
        </button>
        <button type="button" disabled={!loop} onClick={() => listening.setLoop(null)}>
          no loop
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
          to the loop
        </button>
        <button type="button" disabled={time.isWhole} onClick={time.showAll}>
          whole take
        </button>
      </fieldset>
    </>
  )
}
