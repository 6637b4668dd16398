import { sideWords } from '../../session/comparison/side-words'
import { printedKey } from '../actions/key-table'
import { useApp, useEvidence, useListen } from '../context/app-context'
import styles from './matched-switch.module.css'
import { matchedWords } from './matched-words'

/** Both sides equally loud, and by what gain. */
export function MatchedSwitch() {
  const { listening } = useApp()
  const matched = useListen((state) => state.matched)
  const scope = useListen((state) => state.scope)
  const gains = useEvidence(({ evidence }) => evidence?.matching ?? null)
  const { side, amount, sentence } = matchedWords(matched, gains, sideWords(scope))
  return (
    <label
      className={styles.matched}
      title={`Both sides at the same loudness: key ${printedKey('matched')}. ${sentence}`}
    >
      <input
        type="checkbox"
        checked={matched}
        onChange={(event) => listening.setMatched(event.target.checked)}
      />
      {/* Other words are another element: none of them moves to make room. */}
      <span key={`${side} ${amount}`}>
        matched: {side !== null && <span className={styles.side}>{side} </span>}
        {amount}
      </span>
    </label>
  )
}
