import { isolated } from '../../session/take/take-store'
import { useApp, useEvidence, useTake } from '../context/app-context'
import styles from './take.module.css'

/** Loading or analysing, quietly and in a place of its own; loading can be cancelled. */
export function WorkingNote() {
  const { takes } = useApp()
  const loading = useTake((state) => state.loading)
  const tenths = useEvidence(({ working }) => (working === null ? null : Math.floor(working * 10)))
  const hasTake = useTake(({ take }) => take !== null)
  const text = loading
    ? `Loading ${isolated(loading)} …`
    : hasTake && tenths !== null
      ? `Analysing, ${tenths * 10} %`
      : ''
  return (
    <div className={styles.working}>
      <span title={loading ?? undefined}>{text}</span>
      {loading && hasTake && (
        <button type="button" onClick={() => takes.cancel()}>
          Cancel
        </button>
      )}
    </div>
  )
}
