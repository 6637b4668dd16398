import { useBench, useEvidence, useTake } from '../bench-context'
import styles from './notices.module.css'

/** What went wrong and what to do about it. It stands by the listening bar, so that nothing else moves. */
export function Notices() {
  const { takes, evidence } = useBench()
  const problem = useTake((state) => state.problem)
  const evidenceProblem = useEvidence((state) => state.problem)
  return (
    <div role="alert">
      {problem && <Notice message={problem.message} onDismiss={() => takes.dismissProblem()} />}
      {evidenceProblem && (
        <Notice message={evidenceProblem} onDismiss={() => evidence.setState({ problem: null })} />
      )}
    </div>
  )
}

function Notice({ message, onDismiss }: { message: string; onDismiss: () => void }) {
  return (
    <div className={styles.problem}>
      <p>{message}</p>
      <button type="button" onClick={onDismiss}>
        Dismiss
      </button>
    </div>
  )
}
