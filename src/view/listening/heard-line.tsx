import { sideWords } from '../../session/comparison/side-words'
import { useEvidence, useListen } from '../context/app-context'
import styles from './heard-line.module.css'
import { matchedLine, matchedWords } from './matched-words'

/** In the folded bar: how the sides are matched, or that only their difference is heard. */
export function HeardLine() {
  const matched = useListen((state) => state.matched)
  const difference = useListen(({ heard }) => heard === 'difference')
  const scope = useListen((state) => state.scope)
  const gains = useEvidence(({ evidence }) => evidence?.matching ?? null)
  return (
    <p className={styles.line}>
      {difference
        ? 'You hear the difference only, neither side'
        : matchedLine(matched, matchedWords(matched, gains, sideWords(scope)))}
    </p>
  )
}
