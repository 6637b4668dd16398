import { type PointerEvent, useId, useRef, useState } from 'react'
import { bandLetter, bandParameters, frequency, sweepWords } from '../../../core'
import { useApp, useListen } from '../../context/app-context'
import { pressSize } from '../../controls/key-steps'
import { positionOf, stepped, valueAt } from '../../controls/positions'
import styles from './sweep-button.module.css'

/** So far a hand has to move for the whole range, CSS pixels. */
const TRAVEL_PX = 700
/** An arrow key moves this many small moves: about a semitone. */
const KEY_MOVES = 2

interface SweepButtonProps {
  readonly stageId: string
  readonly bandIndex: number
  readonly frequencyHz: number
  /** Takes over the frequency that a sweep ended at. */
  onTake(frequencyHz: number): void
}

/**
 * While it is held down, with the pointer or Space, the band is a narrow boost; moving sideways, or the arrow keys, move
 * it. On release the chain is as before, and the band can be set to where the sweep ended.
 */
export function SweepButton({ stageId, bandIndex, frequencyHz, onTake }: SweepButtonProps) {
  const { listening, listen } = useApp()
  const startX = useRef<number | null>(null)
  const [foundHz, setFoundHz] = useState<number | null>(null)
  const heardId = useId()
  const heard = useListen(({ sweep }) =>
    sweep?.stageId === stageId && sweep.bandIndex === bandIndex ? sweepWords(sweep) : null,
  )
  const sweeping = heard !== null
  const { frequencyHz: parameter } = bandParameters
  if (parameter.type !== 'number') return null

  const goTo = (hz: number) => listening.setSweep({ stageId, bandIndex, frequencyHz: hz })
  const begin = () => {
    setFoundHz(null)
    goTo(frequencyHz)
  }
  const end = () => {
    const { sweep } = listen.getState()
    startX.current = null
    if (!sweeping || !sweep) return
    if (sweep.frequencyHz !== frequencyHz) setFoundHz(sweep.frequencyHz)
    listening.setSweep(null)
  }
  const move = (event: PointerEvent) => {
    if (startX.current === null) return
    const moved = (event.clientX - startX.current) / TRAVEL_PX
    goTo(valueAt(parameter, positionOf(parameter, frequencyHz) + moved))
  }
  const letter = bandLetter(bandIndex)
  return (
    <div className={styles.line}>
      <button
        type="button"
        className={styles.sweep}
        aria-pressed={sweeping}
        aria-describedby={sweeping ? heardId : undefined}
        aria-label={`Sweep band ${letter}: hold and move`}
        title="Hold and move sideways, or use the arrow keys, to find by ear what sounds bad"
        onPointerDown={(event) => {
          if (event.button !== 0) return
          event.currentTarget.setPointerCapture(event.pointerId)
          // Some browsers do not give it to a button that is pressed; the arrow keys need it.
          event.currentTarget.focus()
          startX.current = event.clientX
          begin()
        }}
        onPointerMove={move}
        onLostPointerCapture={end}
        onBlur={() => {
          if (startX.current === null) end()
        }}
        onKeyDown={(event) => {
          if (event.ctrlKey || event.metaKey) return
          if (event.key === ' ') {
            event.preventDefault()
            if (!event.repeat) begin()
          }
          const direction = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0
          const { sweep } = listen.getState()
          if (direction === 0 || !sweeping || !sweep) return
          event.preventDefault()
          goTo(stepped(parameter, sweep.frequencyHz, direction * KEY_MOVES * pressSize(event)))
        }}
        onKeyUp={(event) => {
          if (event.key === ' ') end()
        }}
      >
        sweep
      </button>
      {sweeping && (
        <span id={heardId} className={styles.heard}>
          {heard}
        </span>
      )}
      {foundHz !== null && !sweeping && (
        <button
          type="button"
          className={styles.take}
          onClick={() => {
            onTake(foundHz)
            setFoundHz(null)
          }}
        >
          set to {frequency(foundHz)}
        </button>
      )}
    </div>
  )
}
