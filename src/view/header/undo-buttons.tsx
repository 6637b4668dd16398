import type { ReactNode } from 'react'
import { useApp, useChain } from '../context/app-context'
import styles from './header.module.css'

/** Undo and redo, each with what it would do in words. */
export function UndoButtons() {
  const { chain } = useApp()
  const undone = useChain(({ past }) => past.at(-1)?.words ?? null)
  const redone = useChain(({ future }) => future[0]?.words ?? null)
  return (
    <>
      <Step name="Undo" words={undone} showsWords onStep={() => chain.getState().undo()}>
        <path d="M7 3 3 7l4 4M3 7h7a4 4 0 0 1 0 8H6" />
      </Step>
      <Step name="Redo" words={redone} onStep={() => chain.getState().redo()}>
        <path d="m11 3 4 4-4 4m4-4H8a4 4 0 0 0 0 8h4" />
      </Step>
    </>
  )
}

interface StepProps {
  readonly name: string
  /** What it would do; null where there is nothing to do. */
  readonly words: string | null
  /** Where there is room. */
  readonly showsWords?: boolean
  /** Its arrow. */
  readonly children: ReactNode
  onStep(): void
}

function Step({ name, words, showsWords = false, children, onStep }: StepProps) {
  const label = words === null ? name : `${name}: ${words}`
  return (
    <button
      type="button"
      className={`${styles.step} ${showsWords ? styles.undo : styles.redo}`}
      data-look="bare"
      disabled={words === null}
      aria-label={label}
      title={label}
      onClick={onStep}
    >
      <svg viewBox="0 0 18 18" aria-hidden="true">
        {children}
      </svg>
      {showsWords && <span className={styles.words}>{label}</span>}
    </button>
  )
}
