import { sideWords } from '../../state/kept-versions'
import { useEvidence, useListen, useTake } from '../bench-context'
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
  return (
    <section className={styles.numbers} aria-labelledby="the-numbers">
      <h2 id="the-numbers">The numbers</h2>
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
            />
          ))}
        </tbody>
      </table>
      {problem !== null && (
        <p className={styles.problem} role="alert">
          {problem}
        </p>
      )}
    </section>
  )
}
