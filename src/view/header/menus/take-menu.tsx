import { printedKey } from '../../actions/key-table'
import { useApp, useTake } from '../../context/app-context'
import { useFilePickers } from '../../context/file-pickers'
import styles from './menus.module.css'

/** What can be opened. */
export function TakeMenu({ close }: { close: () => void }) {
  const { takes } = useApp()
  const { chooseTake, chooseBacking } = useFilePickers()
  const hasTake = useTake(({ take }) => take !== null)
  const choose = (open: () => unknown) => () => {
    close()
    open()
  }
  return (
    <span className={styles.entries}>
      <button type="button" data-look="bare" onClick={choose(chooseTake)}>
        Open take <span className={styles.aside}>WAV, FLAC, MP3, M4A or OGG</span>{' '}
        <kbd className={styles.key}>{printedKey('open')}</kbd>
      </button>
      <button type="button" data-look="bare" disabled={!hasTake} onClick={choose(chooseBacking)}>
        Open backing <span className={styles.aside}>what the voice is heard over</span>
      </button>
      <button type="button" data-look="bare" onClick={choose(() => takes.openDemo())}>
        Open the demo
      </button>
      <span className={styles.note}>Your audio never leaves this computer</span>
    </span>
  )
}
