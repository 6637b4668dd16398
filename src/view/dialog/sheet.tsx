import { type KeyboardEvent, type ReactNode, type SyntheticEvent, useEffect, useId, useRef } from 'react'
import { useScreen, useScreenStore } from '../context/screen-context'
import type { SheetName } from '../context/screen-store'
import styles from './sheet.module.css'

interface SheetProps {
  readonly name: SheetName
  readonly title: string
  readonly children: ReactNode
  /** Asked before the reader closes it; false keeps it open. */
  mayClose?(): boolean
}

/**
 * A sheet over the page: the browser's own modal dialog, open while the screen's `sheet` is `name`. Its heading has the
 * focus first, so that what it is gets read out before what can be pressed in it.
 */
export function Sheet({ name, title, children, mayClose }: SheetProps) {
  const screen = useScreenStore()
  const isOpen = useScreen(({ sheet }) => sheet === name)
  const dialog = useRef<HTMLDialogElement>(null)
  const heading = useRef<HTMLHeadingElement>(null)
  const titleId = useId()

  useEffect(() => {
    if (!isOpen) {
      dialog.current?.close()
      return
    }
    dialog.current?.showModal()
    heading.current?.focus()
  }, [isOpen])

  const close = () => screen.setState({ sheet: null })
  const ask = (event: SyntheticEvent) => {
    if (mayClose?.() === false) event.preventDefault()
  }
  // Browsers ask once and close at a second Escape; a press that was used up does not count for them.
  const pressKey = (event: KeyboardEvent) => event.key === 'Escape' && ask(event)
  return (
    <dialog
      ref={dialog}
      className={styles.sheet}
      aria-labelledby={titleId}
      onKeyDown={pressKey}
      onCancel={ask}
      onClose={close}
    >
      <header className={styles.head}>
        <h2 ref={heading} id={titleId} tabIndex={-1}>
          {title}
        </h2>
        <button type="button" data-look="bare" onClick={() => mayClose?.() !== false && close()}>
          Close
        </button>
      </header>
      {isOpen && children}
    </dialog>
  )
}
