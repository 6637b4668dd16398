import { CareNote } from './care-note'
import styles from './notices.module.css'
import { ReplacedTake } from './replaced-take'

/** What there is to say before the work begins: in one line where there is room, and nowhere over the work itself. */
export function PageNotes() {
  return (
    <div className={styles.notes}>
      <CareNote />
      <ReplacedTake />
    </div>
  )
}
