import { printedKey } from '../actions/key-table'
import { useApp, useListen, useTake } from '../context/app-context'
import styles from './play-button.module.css'

/** Starts and stops. */
export function PlayButton() {
  const { listening } = useApp()
  const playing = useListen((state) => state.playing)
  const hasTake = useTake(({ take }) => take !== null)
  return (
    <span className={styles.place}>
      <button
        type="button"
        className={styles.play}
        aria-label={playing ? 'Stop' : 'Play'}
        title={`${playing ? 'Stop' : 'Play'}: key ${printedKey('play')}`}
        disabled={!hasTake}
        onClick={() => void listening.togglePlay()}
      >
        <svg viewBox="0 0 24 24" width="20" height="20" aria-hidden="true">
          {playing ? <path d="M7 6h10v12H7z" /> : <path d="M8 5l11 7-11 7z" />}
        </svg>
      </button>
      <span className={styles.key} aria-hidden="true">
        {printedKey('play')}
      </span>
    </span>
  )
}
