import type { ReactNode } from 'react'
import styles from './told.module.css'

interface ToldProps {
  readonly help: string
  onHelp(help: string): void
  readonly children: ReactNode
}

/** Tells what the controls inside do when one is pointed at or gets the focus. */
export function Told({ help, onHelp, children }: ToldProps) {
  const tell = () => onHelp(help)
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: only listens to what the controls inside are doing
    <div className={styles.row} onFocus={tell} onPointerEnter={tell}>
      {children}
    </div>
  )
}
