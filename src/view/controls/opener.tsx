import type { RefObject } from 'react'
import styles from './opener.module.css'

interface OpenerProps {
  readonly label: string
  /** What the button is called, where that is more than its label. */
  readonly name?: string | undefined
  readonly title?: string | undefined
  readonly opens: 'above' | 'beneath'
  readonly isOpen: boolean
  /** Id of what it opens, where that is there all the time. */
  readonly controls?: string
  readonly disabled?: boolean
  readonly button: RefObject<HTMLButtonElement | null>
  onPress(): void
}

/** A button with a mark that points to what it opens and closes. */
export function Opener({
  label,
  name,
  title,
  opens,
  isOpen,
  controls,
  disabled,
  button,
  onPress,
}: OpenerProps) {
  return (
    <button
      ref={button}
      type="button"
      className={styles.opener}
      data-look="bare"
      data-opens={opens}
      aria-expanded={isOpen}
      aria-controls={controls}
      aria-label={name}
      title={title}
      disabled={disabled}
      onClick={onPress}
    >
      <span>{label}</span>
    </button>
  )
}
