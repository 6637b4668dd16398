import { keyTable } from '../actions/key-table'
import { trialKeyRows } from '../actions/trial-keys'
import { useScreen, useScreenStore } from '../context/screen-context'
import { Sheet } from '../dialog/sheet'
import styles from './keys.module.css'

/** All keys, and the switch for those who do not want single ones. */
export function KeysSheet() {
  const screen = useScreenStore()
  const singleKeys = useScreen((state) => state.singleKeys)
  return (
    <Sheet name="keys" title="Keys">
      <KeyTable rows={keyTable} />
      <p className={styles.more}>
        On the take: arrows move by 1 s, with Shift by 10 s, with Alt by 0.1 s; Home and End go to its ends; +
        − 0 zoom. On a slider: arrows, with Shift in large steps. On a band of the response: arrows move it,
        Page Up and Page Down, Home and End go to another, Delete sets its gain to 0 dB.
      </p>
      <h3 className={styles.part}>In a blind trial</h3>
      <KeyTable rows={trialKeyRows} />
      <button type="button" className={styles.terms} onClick={() => screen.setState({ sheet: 'terms' })}>
        What the terms mean
      </button>
      <label className={styles.single}>
        <input
          type="checkbox"
          checked={singleKeys}
          onChange={(event) => screen.setState({ singleKeys: event.target.checked })}
        />
        single keys on (undo and redo always work)
      </label>
    </Sheet>
  )
}

interface KeyTableProps {
  readonly rows: readonly { readonly printed: string; readonly does: string }[]
}

function KeyTable({ rows }: KeyTableProps) {
  return (
    <table className={styles.keys}>
      <thead>
        <tr>
          <th scope="col">Key</th>
          <th scope="col">What it does</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ printed, does }) => (
          <tr key={printed}>
            <td>
              <kbd>{printed}</kbd>
            </td>
            <td>{does}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
