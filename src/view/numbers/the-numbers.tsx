import { sideWords } from '../../session/kept-versions'
import { useEvidence, useListen, useTake } from '../bench-context'
import { addUp, figures } from './figures'
import { NumberLine } from './number-line'
import { usePendingWords } from './pending-words'
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
  const isRounded = evidence && !addUp(evidence.without.measures, evidence.with.measures)
  return (
    <section className={styles.numbers} aria-labelledby="the-numbers">
      <div className={styles.head}>
        <h2 id="the-numbers">The numbers</h2>
        <p className={problem === null ? styles.note : styles.problem}>
          {problem === null ? 'of the whole take' : 'not up to date'}
          {isRounded && <span className={styles.rounding}>, rounded one by one</span>}
        </p>
      </div>
      <table className={styles.table} aria-busy={hasTake && working !== null}>
        <caption className={styles.caption}>
          <WhatIsCompared />
        </caption>
        <thead>
          <tr>
            <td />
            <th scope="col">{sides.without}</th>
            <th scope="col">{sides.with}</th>
            <th scope="col">change</th>
          </tr>
        </thead>
        <tbody>
          {figures.map((figure) => (
            <NumberLine
              key={figure.key}
              figure={figure}
              without={evidence?.without.measures ?? null}
              with={evidence?.with.measures ?? null}
              coming={coming}
            />
          ))}
        </tbody>
      </table>
    </section>
  )
}
