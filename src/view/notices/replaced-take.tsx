import { useBench, useTake } from '../bench-context'
import styles from './notices.module.css'

/** Says that the demo took the place of something opened, and brings that back. */
export function ReplacedTake() {
  const { takes } = useBench()
  const name = useTake(({ replaced }) => replaced?.take.name ?? null)
  return (
    <div role="status">
      {name !== null && (
        <div className={styles.news}>
          <p>The demo is in the place of {name}. The chain stayed as it is.</p>
          <span className={styles.answers}>
            <button type="button" onClick={() => void takes.bringBack()}>
              Bring it back
            </button>
            <button type="button" onClick={() => takes.forgetReplaced()}>
              Let it go
            </button>
          </span>
        </div>
      )}
    </div>
  )
}
