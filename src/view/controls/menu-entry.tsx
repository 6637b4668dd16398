import styles from './menu-entry.module.css'

interface MenuEntryProps {
  readonly label: string
  /** What it is for. */
  readonly purpose: string
  onChoose(): void
}

/** Something that a menu offers. */
export function MenuEntry({ label, purpose, onChoose }: MenuEntryProps) {
  return (
    <button type="button" className={styles.entry} onClick={onChoose}>
      <span className={styles.label}>{label}</span>
      <span className={styles.purpose}>{purpose}</span>
    </button>
  )
}
