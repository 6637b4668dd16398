import { type ReactNode, useEffect, useId, useRef } from 'react'
import { useScreen, useScreenStore } from '../screen-context'
import type { SheetName } from '../screen-store'
import styles from './sheet.module.css'

interface SheetProps {
  readonly name: SheetName
  readonly title: string
  readonly children: ReactNode
}

/** A sheet over the page: the browser's own modal dialog, open while the screen's `sheet` is `name`. */
export function Sheet({ name, title, children }: SheetProps) {
  const screen = useScreenStore()
  const isOpen = useScreen(({ sheet }) => sheet === name)
  const dialog = useRef<HTMLDialogElement>(null)
  const titleId = useId()

  useEffect(() => {
    if (isOpen) dialog.current?.showModal()
    else dialog.current?.close()
  }, [isOpen])

  const close = () => screen.setState({ sheet: null })
  return (
    <dialog ref={dialog} className={styles.sheet} aria-labelledby={titleId} onClose={close}>
      <header className={styles.head}>
        <h2 id={titleId}>{title}</h2>
        <button type="button" onClick={close}>
          Close
        </button>
      </header>
      {isOpen && children}
    </dialog>
  )
}
