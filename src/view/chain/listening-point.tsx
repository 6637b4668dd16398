import styles from './listening-point.module.css'

interface ListeningPointProps {
  /** Whether this is the listening point. */
  readonly here: boolean
  /** Where in the chain this is, as it follows a comma. */
  readonly place: string
  onPut(): void
}

/** A place in the chain that can be made the listening point, to hear the sound up to there. */
export function ListeningPoint({ here, place, onPut }: ListeningPointProps) {
  return (
    <button
      type="button"
      className={styles.point}
      aria-pressed={here}
      aria-label={`Hear up to here, ${place}`}
      title={`Hear the sound ${place}`}
      onClick={onPut}
    >
      <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
        <path d="M4.5 6.5a3.5 3.5 0 0 1 7 0c0 2.5-2.5 3-2.5 5a2 2 0 0 1-3.6 1.2M6.6 6.6a1.4 1.4 0 0 1 2.8 0c0 1-.9 1.2-1.1 2" />
      </svg>
      <span className={styles.words}>Hear up to here</span>
    </button>
  )
}
