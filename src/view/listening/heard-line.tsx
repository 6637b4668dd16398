import { sideWords } from '../../session/kept-versions'
import { useEvidence, useListen } from '../bench-context'
import styles from './heard-line.module.css'
import { matchedLine, matchedWords } from './matched-words'

/** In the folded bar: by what gain both sides are equally loud, or that neither of them is heard. */
export function HeardLine() {
  const matched = useListen((state) => state.matched)
  const removed = useListen(({ heard }) => heard === 'removed')
  const scope = useListen((state) => state.scope)
  const gains = useEvidence(({ evidence }) => evidence?.matching ?? null)
  const difference = scope.kind === 'kept' ? 'what differs' : 'what was removed'
  return (
    <p className={styles.line}>
      {removed
        ? `You hear only ${difference}, neither side`
        : matchedLine(matched, matchedWords(matched, gains, sideWords(scope)))}
    </p>
  )
}
