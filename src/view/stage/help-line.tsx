import styles from './help-line.module.css'

interface HelpLineProps {
  /** What the setting does; screen readers have it from the control itself. */
  readonly text: string
  /** What to show while nothing is pointed at. */
  readonly idle: string
}

/** What the stage is for, and while a setting is pointed at or has the focus, what that does. */
export function HelpLine({ text, idle }: HelpLineProps) {
  return (
    <p className={styles.help} aria-hidden={text !== ''}>
      {text || idle}
    </p>
  )
}
