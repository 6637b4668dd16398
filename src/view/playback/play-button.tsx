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
        data-look="solid"
        aria-label={playing ? 'Stop' : 'Play'}
        title={`${playing ? 'Stop' : 'Play'}: key ${printedKey('play')}`}
        disabled={!hasTake}
        onClick={() => void listening.togglePlay()}
      >
        <svg viewBox="0 0 24 24" aria-hidden="true">
          {playing ? <path d="M5 5h14v14H5z" /> : <path d="M7 4l13 8-13 8z" />}
        </svg>
      </button>
      <span className={styles.key} aria-hidden="true">
        {printedKey('play')}
      </span>
    </span>
  )
}
