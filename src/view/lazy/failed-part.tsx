import { useEffect, useRef } from 'react'
import { useScreenStore } from '../context/screen-context'
import styles from './failed-part.module.css'
import type { FailedViewProps } from './lazy-view'

/** Says in place of a part of the page that it could not be loaded. */
export function FailedPart({ message, onRetry }: FailedViewProps) {
  return (
    <div role="alert" className={styles.failed}>
      <p>{message}</p>
      <button type="button" onClick={onRetry}>
        Try again
      </button>
    </div>
  )
}

/** Says in place of a sheet that it could not be loaded. */
export function FailedSheet({ message, onRetry }: FailedViewProps) {
  const screen = useScreenStore()
  const dialog = useRef<HTMLDialogElement>(null)
  useEffect(() => dialog.current?.showModal(), [])
  const close = () => screen.setState({ sheet: null })
  return (
    <dialog ref={dialog} className={styles.sheet} aria-label="Not loaded" onClose={close}>
      <div role="alert">
        <p>{message}</p>
        <button type="button" onClick={onRetry}>
          Try again
        </button>
        <button type="button" onClick={close}>
          Close
        </button>
      </div>
    </dialog>
  )
}
