import { type ReactNode, useEffect, useId, useRef, useState } from 'react'
import { Opener } from '../controls/opener'
import styles from './fold.module.css'

interface FoldProps {
  /** On the button that opens it: what is chosen in it now. */
  readonly label: string
  /** What is chosen in it. */
  readonly title: string
  /** Folded on wide screens too. */
  readonly always?: boolean
  readonly children: ReactNode
  /** Only while it is open: what a narrow screen has no room for otherwise. */
  readonly more?: ReactNode
}

/**
 * Controls that a narrow screen folds behind a button. They open over the page, above the bar; Escape, a press outside
 * and the focus going elsewhere close them, and so does a choice by pointer.
 */
export function Fold({ label, title, always = false, children, more }: FoldProps) {
  const [open, setOpen] = useState(false)
  const fold = useRef<HTMLDivElement>(null)
  const opener = useRef<HTMLButtonElement>(null)
  const id = useId()
  useEffect(() => {
    if (!open) return
    const press = ({ target }: PointerEvent) => {
      if (target instanceof Node && !fold.current?.contains(target)) setOpen(false)
    }
    window.addEventListener('pointerdown', press)
    return () => window.removeEventListener('pointerdown', press)
  }, [open])
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: listens to keys and focus of the controls inside only
    <div
      ref={fold}
      className={styles.fold}
      data-always={always}
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || !open) return
        event.stopPropagation()
        setOpen(false)
        opener.current?.focus()
      }}
      onBlur={({ relatedTarget, currentTarget }) => {
        if (relatedTarget && !currentTarget.contains(relatedTarget)) setOpen(false)
      }}
      onChange={({ target }) => {
        // Arrow keys go through the choices one by one: the pointer alone has chosen with its first.
        if (
          target instanceof HTMLInputElement &&
          target.type === 'radio' &&
          !target.matches(':focus-visible')
        )
          setOpen(false)
      }}
    >
      <span className={styles.opener}>
        <Opener
          button={opener}
          label={label}
          title={title}
          opens="above"
          isOpen={open}
          controls={id}
          onPress={() => setOpen(!open)}
        />
      </span>
      <div id={id} className={styles.content} data-open={open}>
        {children}
        {open && more && <div className={styles.more}>{more}</div>}
      </div>
    </div>
  )
}
