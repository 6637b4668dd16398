import { sideWords } from '../../session/comparison/side-words'
import { useEvidence, useListen, useTake } from '../context/app-context'
import { usePendingWords } from '../context/use-pending-words'
import { figures } from './figures'
import { NumberLine } from './number-line'
import styles from './the-numbers.module.css'
import { WhatIsCompared } from './what-is-compared'

/** The figures without, with, and the difference. */
export function TheNumbers() {
  const evidence = useEvidence((state) => state.evidence)
  const working = useEvidence((state) => state.working)
  const problem = useEvidence((state) => state.problem)
  const sides = sideWords(useListen((state) => state.scope))
  const hasTake = useTake((state) => state.take !== null)
  const coming = usePendingWords() === '…'
  return (
    <section className={styles.numbers} aria-labelledby="the-numbers">
      <div className={styles.head}>
        <h2 id="the-numbers">Figures</h2>
        <p className={problem === null ? styles.note : styles.problem}>
          {problem === null ? 'of the whole take' : 'not up to date'}
        </p>
      </div>
      <table className={styles.table} aria-busy={hasTake && working !== null}>
        <caption className={styles.caption}>
          <WhatIsCompared />
        </caption>
        <thead>
          <tr>
            <td />
            <th scope="col">{sides.bypassed}</th>
            <th scope="col">{sides.processed}</th>
            <th scope="col">change</th>
          </tr>
        </thead>
        <tbody>
          {figures.map((figure) => (
            <NumberLine
              key={figure.key}
              figure={figure}
              bypassed={evidence?.bypassed.measures ?? null}
              processed={evidence?.processed.measures ?? null}
              coming={coming}
            />
          ))}
        </tbody>
      </table>
    </section>
  )
}
