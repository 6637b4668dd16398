import styles from './help-line.module.css'

/** What the setting at hand does. Screen readers have it from the control itself. */
export function HelpLine({ text }: { text: string }) {
  return (
    <p className={styles.help} aria-hidden="true">
      {text}
    </p>
  )
}
