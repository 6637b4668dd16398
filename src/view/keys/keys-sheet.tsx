import { Sheet } from '../dialog/sheet'
import { useScreen, useScreenStore } from '../screen-context'
import { keyRows } from './key-actions'
import styles from './keys.module.css'

/** All keys, and the switch for those who do not want single ones. */
export function KeysSheet() {
  const screen = useScreenStore()
  const singleKeys = useScreen((state) => state.singleKeys)
  return (
    <Sheet name="keys" title="Keys">
      <table className={styles.keys}>
        <thead>
          <tr>
            <th scope="col">Key</th>
            <th scope="col">What it does</th>
          </tr>
        </thead>
        <tbody>
          {keyRows.map(({ action, keys, does }) => (
            <tr key={action}>
              <td>
                <kbd>{keys}</kbd>
              </td>
              <td>{does}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className={styles.more}>
        On the take: arrows go by a second, with Shift by ten, with Alt by a tenth; Home and End to its ends;
        + − 0 zoom. On a slider: arrows, with Shift in large steps.
      </p>
      <button type="button" className={styles.terms} onClick={() => screen.setState({ sheet: 'terms' })}>
        What the terms mean
      </button>
      <label className={styles.single}>
        <input
          type="checkbox"
          checked={singleKeys}
          onChange={(event) => screen.setState({ singleKeys: event.target.checked })}
        />
        single keys work (undo and redo always do)
      </label>
    </Sheet>
  )
}
