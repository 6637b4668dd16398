import { useApp, useEvidence, useTake } from '../context/app-context'
import styles from './notices.module.css'

/** What went wrong and what to do about it. It stands by the listening bar, so that nothing else moves. */
export function Notices() {
  const { takes, askAgain, dismissEvidenceProblem } = useApp()
  const problems = useTake((state) => state.problems)
  const evidenceProblem = useEvidence((state) => state.problem)
  return (
    <div role="alert" className={styles.problems}>
      {problems.map((problem) => (
        <Notice
          key={problem.message}
          message={problem.message}
          onDismiss={() => takes.dismissProblem(problem)}
        />
      ))}
      {evidenceProblem && (
        <Notice message={evidenceProblem} onRetry={askAgain} onDismiss={dismissEvidenceProblem} />
      )}
    </div>
  )
}

interface NoticeProps {
  readonly message: string
  /** Has it tried once more, where that makes sense. */
  onRetry?(): void
  onDismiss(): void
}

function Notice({ message, onRetry, onDismiss }: NoticeProps) {
  return (
    <div className={styles.problem}>
      <p>{message}</p>
      <span className={styles.answers}>
        {onRetry && (
          <button type="button" onClick={onRetry}>
            Try again
          </button>
        )}
        <button type="button" onClick={onDismiss}>
          Dismiss
        </button>
      </span>
    </div>
  )
}
