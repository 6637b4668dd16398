import styles from './switch.module.css'

interface SwitchProps {
  readonly on: boolean
  /** What it switches. */
  readonly label: string
  onChange(on: boolean): void
}

/** On or off: solid and filled, or hollow and dashed. */
export function Switch({ on, label, onChange }: SwitchProps) {
  return (
    <button
      type="button"
      role="switch"
      aria-checked={on}
      aria-label={label}
      className={styles.switch}
      onClick={() => onChange(!on)}
    >
      <span className={styles.way} />
    </button>
  )
}
