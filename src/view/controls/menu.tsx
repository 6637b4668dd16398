import { type ReactNode, type RefObject, useRef, useState } from 'react'
import styles from './menu.module.css'
import { Opener } from './opener'

interface MenuProps {
  /** On the button that opens it. */
  readonly label: string
  /** What the button is called, where that is more than its label. */
  readonly name?: string | undefined
  readonly disabled?: boolean
  /** The edge of the button that the list begins from. */
  readonly align?: 'start' | 'end'
  /** Holds the button, for those who give it the focus. */
  readonly opener?: RefObject<HTMLButtonElement | null>
  /** Choices; `close` folds the list and gives the focus back. */
  children(close: () => void): ReactNode
}

/** A button with a list that opens under it, and closes on Escape or when the focus leaves. */
export function Menu({ label, name, disabled = false, align = 'end', opener: given, children }: MenuProps) {
  const [open, setOpen] = useState(false)
  const own = useRef<HTMLButtonElement>(null)
  const opener = given ?? own
  const close = () => {
    setOpen(false)
    opener.current?.focus()
  }
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: listens to keys and focus of the controls inside only
    <span
      className={styles.menu}
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || !open) return
        event.stopPropagation()
        close()
      }}
      onBlur={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget)) setOpen(false)
      }}
    >
      <Opener
        button={opener}
        label={label}
        name={name}
        title={name}
        opens="beneath"
        isOpen={open}
        disabled={disabled}
        onPress={() => setOpen(!open)}
      />
      {open && (
        <span className={styles.list} data-align={align}>
          {children(close)}
        </span>
      )}
    </span>
  )
}
