import { memo, useRef } from 'react'
import { bandParameters, numberedBand, plain } from '../../core'
import { setBand } from '../../session/chain/chain-edits'
import { useApp, useListen, useStageColour } from '../context/app-context'
import { pressSize } from '../controls/key-steps'
import { stepped } from '../controls/positions'
import { useWheel } from '../hooks/use-wheel'
import styles from './band-handle.module.css'
import { HandleSlider } from './handle-slider'
import { type Handle, sameHandle, settingsAt } from './handles'
import type { Plot } from './plot'
import { useHandleDrag } from './use-handle-drag'

interface BandHandleProps {
  readonly handle: Handle
  readonly plot: Plot
  /** Told when a drag begins and ends. */
  onDrag(dragged: boolean): void
}

/**
 * A band on the plot: a stem from 0 dB to its gain, with a bar across its end and its letter beyond. Dragging sets
 * frequency and gain, with Shift held the Q; the wheel sets Q while it has the focus. For keys and screen readers it is
 * one or two native sliders. Drawn anew only when the handle itself has changed, not with every move of another.
 */
export const BandHandle = memo(({ handle, plot, onDrag }: BandHandleProps) => {
  const { chain, listening } = useApp()
  const group = useRef<HTMLFieldSetElement>(null)
  const { stageId, stageIndex, bandIndex, band, hasGain } = handle
  const colour = useStageColour(stageId)
  const name = numberedBand(stageIndex, bandIndex)
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
  const sliders = { handle, name, onChange: change, onRest: rest }
  return (
    <fieldset
      ref={group}
      className={handle.on ? styles.on : styles.off}
      data-above={handle.letterAbove}
      style={{ left: handle.left, top: handle.top, '--stage': colour }}
      aria-label={`Band ${name}, ${band.shape}`}
      title={`Band ${name}${cornerWords(handle)}: drag for frequency${hasGain ? ' and gain' : ''}, Shift-drag or wheel for Q`}
      onPointerDown={(event) => drag(event, handle)}
      onDoubleClick={() => {
        if (hasGain) change({ gainDb: 0 }, 'gainDb')
        rest()
      }}
    >
      <span
        className={styles.stem}
        style={{ top: Math.min(0, handle.toZero), height: Math.abs(handle.toZero) }}
      />
      <span className={styles.letter} aria-hidden="true">
        {name}
      </span>
      <HandleSlider {...sliders} setting="frequencyHz" />
      {hasGain && <HandleSlider {...sliders} setting="gainDb" />}
    </fieldset>
  )
}, isSame)

function isSame(a: BandHandleProps, b: BandHandleProps): boolean {
  return a.plot === b.plot && a.onDrag === b.onDrag && sameHandle(a.handle, b.handle)
}

/** Says what a pass filter does at its corner, because its handle is off the 0 dB line. */
function cornerWords({ band: { shape }, heightDb }: Handle): string {
  if (shape !== 'high-pass' && shape !== 'low-pass') return ''
  return `, corner at ${plain(heightDb, 0)} dB`
}
