import type { TrialRecord } from '../../session/trials/trial-record'
import { Unseen } from '../controls/unseen'
import styles from './trial.module.css'
import { answerName } from './trial-words'

/** Every round that was answered: what it was, what it was said to be. */
export function RoundsTable({ trial }: { trial: TrialRecord }) {
  const { kind, sides, answers } = trial
  return (
    <details>
      <summary>Round by round</summary>
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">Round</th>
            <th scope="col">{kind === 'name-x' ? 'X was' : `“${sides.processed}” was`}</th>
            <th scope="col">Answer</th>
            <th scope="col">
              <Unseen>Right or wrong</Unseen>
            </th>
            <th scope="col">Time, s</th>
          </tr>
        </thead>
        <tbody>
          {answers.map(({ hidden, said, seconds }, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rounds have nothing but their place.
            <tr key={index}>
              <td>{index + 1}</td>
              <td>{answerName(trial, hidden)}</td>
              <td>{answerName(trial, said)}</td>
              <td>{hidden === said ? 'right' : 'wrong'}</td>
              <td>{seconds.toFixed(1)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  )
}
