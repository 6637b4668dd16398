import { sideWords } from '../../session/comparison/side-words'
import { useEvidence, useListen } from '../context/app-context'
import styles from './heard-line.module.css'
import { matchedLine, matchedWords } from './matched-words'

/** In the folded bar: by what gain both sides are equally loud, or that neither of them is heard. */
export function HeardLine() {
  const matched = useListen((state) => state.matched)
  const difference = useListen(({ heard }) => heard === 'difference')
  const scope = useListen((state) => state.scope)
  const gains = useEvidence(({ evidence }) => evidence?.matching ?? null)
  const what = scope.kind === 'snapshots' ? 'what differs' : 'what was removed'
  return (
    <p className={styles.line}>
      {difference
        ? `You hear only ${what}, neither side`
        : matchedLine(matched, matchedWords(matched, gains, sideWords(scope)))}
    </p>
  )
}
