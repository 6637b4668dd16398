import { useScreen, useScreenStore } from '../context/screen-context'
import styles from './notices.module.css'

/** Care for ears: one line that can be dismissed, with the exposure figures and their sources behind it. */
export function CareNote() {
  const screen = useScreenStore()
  const read = useScreen(({ careNoteRead }) => careNoteRead)
  if (read) return null
  return (
    <aside className={styles.care} aria-label="Care for ears">
      <details>
        <summary>
          Loud sound damages hearing<span className={styles.advice}>: keep headphones low, take breaks</span>.{' '}
          <span className={styles.more}>Figures and sources</span>
        </summary>
        <ul>
          <li>
            NIOSH, publication 98-126 (1998): at most 85 dBA for 8 hours; each 3 dB more halves the time.
          </li>
          <li>
            WHO and ITU-T H.870 (2018), personal listening: in a week at most as much as 40 hours at 80 dBA;
            for children 75 dBA.
          </li>
          <li>
            Software cannot measure the level at your ear. Local rules and professional advice come first.
          </li>
        </ul>
      </details>
      <button
        type="button"
        data-look="bare"
        aria-label="Dismiss"
        title="Dismiss"
        onClick={() => screen.setState({ careNoteRead: true })}
      >
        <span aria-hidden="true">×</span>
      </button>
    </aside>
  )
}
