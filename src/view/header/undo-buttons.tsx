import { useApp, useChain } from '../context/app-context'
import styles from './header.module.css'

/** Undo and redo, each with what it would do in words. */
export function UndoButtons() {
  const { chain } = useApp()
  const undone = useChain(({ past }) => past.at(-1)?.words ?? null)
  const redone = useChain(({ future }) => future[0]?.words ?? null)
  return (
    <div className={styles.changes}>
      <Step name="Undo" words={undone} onStep={() => chain.getState().undo()} />
      <Step name="Redo" words={redone} onStep={() => chain.getState().redo()} />
    </div>
  )
}

function Step({ name, words, onStep }: { name: string; words: string | null; onStep: () => void }) {
  const label = words === null ? name : `${name}: ${words}`
  return (
    <button type="button" className={styles.step} disabled={words === null} title={label} onClick={onStep}>
      {label}
    </button>
  )
}
