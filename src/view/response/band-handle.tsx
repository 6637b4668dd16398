import { memo, useEffect, useRef } from 'react'
import { bandParameters, plain } from '../../core'
import { setBand } from '../../session/chain/chain-edits'
import { useApp, useListen, useStageColour } from '../context/app-context'
import { pressSize } from '../controls/key-steps'
import { stepped } from '../controls/positions'
import { useWheel } from '../hooks/use-wheel'
import styles from './band-handle.module.css'
import { BandSlider } from './band-slider'
import { type Handle, settingsAt } from './handles'
import type { NamedHandle } from './name-places'
import type { Plot } from './plot'
import type { PointedStore } from './pointed-store'
import { useHandleDrag } from './use-handle-drag'

interface BandHandleProps {
  readonly handle: NamedHandle
  /** Whether it is the one that the Tab key goes to. */
  readonly isStop: boolean
  readonly plot: Plot
  readonly pointed: PointedStore
  /** Told its key when it takes the focus. */
  onStop(key: string): void
  /** Told when a drag begins and ends. */
  onDrag(dragged: boolean): void
}

/**
 * What is pressed of a band on the plot: its name, and the head of its stem. Dragging sets frequency and gain, with Shift
 * held the Q; the wheel sets Q while it has the focus. For keys and screen readers it is a native slider. Drawn anew only
 * when the handle itself has changed, not with every move of another.
 */
export const BandHandle = memo(({ handle, isStop, plot, pointed, onStop, onDrag }: BandHandleProps) => {
  const { chain, listening } = useApp()
  const group = useRef<HTMLDivElement>(null)
  const { key, stageId, bandIndex, band, hasGain, left, top, zeroTop, nameTop } = handle
  const colour = useStageColour(stageId)
  const sweep = useListen(({ sweep: at }) =>
    at?.stageId === stageId && at.bandIndex === bandIndex ? at : null,
  )
  // While the band is swept, moving it moves the sweep and leaves the chain alone.
  const change = (patch: Partial<typeof band>, what: string) =>
    sweep
      ? listening.setSweep({ ...sweep, frequencyHz: patch.frequencyHz ?? sweep.frequencyHz })
      : chain.getState().edit(setBand(stageId, bandIndex, patch), `${stageId} handle ${bandIndex} ${what}`)
  const rest = () => chain.getState().endGesture()
  const { q } = bandParameters
  const turnQ = (moves: number, from = band.q) =>
    q.type === 'number' && change({ q: stepped(q, from, moves) }, 'q')

  useWheel(group, (direction, event) => turnQ(direction * pressSize(event)))
  useFocusedFrequency(pointed, key, band.frequencyHz)
  const drag = useHandleDrag({
    onBegin: () => {
      rest()
      chain.getState().select(stageId)
      group.current?.querySelector('input')?.focus()
      onDrag(true)
    },
    onMove: (dx, dy, shiftKey, start: Handle) =>
      shiftKey
        ? turnQ(-dy / 4, start.band.q)
        : change(settingsAt(plot, handle, start.left + dx, start.top + dy), 'place'),
    onEnd: () => {
      rest()
      onDrag(false)
    },
  })
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: what a hand takes; for all others there is the slider in it
    <div
      ref={group}
      className={handle.on ? styles.on : styles.off}
      data-band={handle.label}
      style={{ left, '--stage': colour }}
      title={hintOf(handle)}
      onPointerDown={(event) => drag(event, handle)}
      onPointerEnter={() => pointed.setState({ hovered: key })}
      onPointerLeave={() =>
        pointed.setState(({ hovered }) => ({ hovered: hovered === key ? null : hovered }))
      }
      onFocus={() => {
        pointed.setState({ focused: key, focusedHz: band.frequencyHz })
        onStop(key)
      }}
      onBlur={() =>
        pointed.setState(({ focused }) => (focused === key ? { focused: null, focusedHz: null } : {}))
      }
      onDoubleClick={() => {
        if (hasGain) change({ gainDb: 0 }, 'gainDb')
        rest()
      }}
    >
      <span
        className={styles.stem}
        style={{ top: Math.min(top, zeroTop), height: Math.abs(zeroTop - top) }}
      />
      <span className={styles.head} style={{ top }} />
      <span className={styles.name} style={{ top: nameTop }} aria-hidden="true">
        {handle.label}
      </span>
      <BandSlider handle={handle} isStop={isStop} onChange={change} onRest={rest} />
    </div>
  )
}, isSame)

function isSame({ handle: a, ...others }: BandHandleProps, { handle: b, ...next }: BandHandleProps): boolean {
  return sameValues(a, b) && sameValues(others, next)
}

function sameValues(a: object, b: object): boolean {
  const values = Object.values(b)
  return Object.values(a).every((value, i) => value === values[i])
}

/** The frequency that is read follows the band while it has the focus. */
function useFocusedFrequency(pointed: PointedStore, key: string, hz: number): void {
  useEffect(() => {
    if (pointed.getState().focused === key) pointed.setState({ focusedHz: hz })
  }, [pointed, key, hz])
}

function hintOf({ name, hasGain, band: { shape }, heightDb }: Handle): string {
  // A pass stands off the 0 dB line, at what it does at its corner.
  const isPass = shape === 'high-pass' || shape === 'low-pass'
  const corner = isPass ? `, corner at ${plain(heightDb, 0)} dB` : ''
  return `${name}${corner}: drag for frequency${hasGain ? ' and gain' : ''}; Shift-drag or wheel for Q`
}
