import { type KeyboardEvent, useEffect, useRef } from 'react'
import styles from './trial.module.css'

/** Asked before a running trial is abandoned. */
export function LeaveQuestion({ onStay, onLeave }: { onStay: () => void; onLeave: () => void }) {
  const stay = useRef<HTMLButtonElement>(null)
  useEffect(() => stay.current?.focus(), [])
  /** Whoever came here by Escape gets back by it. */
  const pressKey = (event: KeyboardEvent) => {
    if (event.key !== 'Escape') return
    event.preventDefault()
    event.stopPropagation()
    onStay()
  }
  return (
    <div className={styles.round}>
      <p id="leave-question">Quit this trial? It stays in the list as abandoned.</p>
      <div className={styles.actions}>
        <button
          ref={stay}
          type="button"
          className={styles.main}
          data-look="solid"
          aria-describedby="leave-question"
          onClick={onStay}
          onKeyDown={pressKey}
        >
          Continue
        </button>
        <button type="button" onClick={onLeave} onKeyDown={pressKey}>
          Quit trial
        </button>
      </div>
    </div>
  )
}
