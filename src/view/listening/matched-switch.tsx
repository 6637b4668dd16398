import { sideWords } from '../../session/comparison/side-words'
import { printedKey } from '../actions/key-table'
import { useApp, useEvidence, useListen } from '../context/app-context'
import styles from './listening.module.css'
import { matchedWords } from './matched-words'

/** Both sides equally loud, and by what gain. */
export function MatchedSwitch() {
  const { listening } = useApp()
  const matched = useListen((state) => state.matched)
  const scope = useListen((state) => state.scope)
  const gains = useEvidence(({ evidence }) => evidence?.matching ?? null)
  const { gain, basis } = matchedWords(matched, gains, sideWords(scope))
  return (
    <div className={`${styles.pair} ${styles.matched}`}>
      <label className={styles.check} title={`Both sides at the same loudness: key ${printedKey('matched')}`}>
        <input
          type="checkbox"
          checked={matched}
          onChange={(event) => listening.setMatched(event.target.checked)}
        />
        matched: {basis}
      </label>
      <span className={styles.note}>{gain}</span>
    </div>
  )
}
