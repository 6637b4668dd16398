import { printProbability, probabilityByChance } from '../../core'
import { saveTrials } from '../../session/trials/save-trials'
import { rightOf } from '../../session/trials/trial-record'
import styles from './trial.module.css'
import { historyWords } from './trial-words'
import { useTrial } from './use-trial'

const timeOfDay = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' })

/** Every trial that was started, including abandoned ones. */
export function History() {
  const history = useTrial((state) => state.history)
  if (history.length === 0) return null
  return (
    <section className={styles.history} aria-label="Trials so far">
      <p className={styles.facts}>{historyWords(history)}</p>
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">Trial</th>
            <th scope="col">Started</th>
            <th scope="col">Compared</th>
            <th scope="col">Right</th>
            <th scope="col">By chance</th>
          </tr>
        </thead>
        <tbody>
          {history.map((trial) => (
            <tr key={trial.number}>
              <td>{trial.number}</td>
              <td>
                <time dateTime={trial.begunAt}>{timeOfDay.format(new Date(trial.begunAt))}</time>
              </td>
              <td>{trial.compared}</td>
              {trial.finished ? (
                <>
                  <td>{`${rightOf(trial)} of ${trial.rounds}`}</td>
                  <td>{printProbability(probabilityByChance(rightOf(trial), trial.rounds))}</td>
                </>
              ) : (
                <td colSpan={2}>abandoned</td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
      <button type="button" onClick={() => saveTrials(history)}>
        Save as CSV
      </button>
    </section>
  )
}
