import type { CSSProperties, ReactNode } from 'react'
import styles from './scaled-line.module.css'

interface ScaledLineProps {
  /** What it says to those who cannot see it; nothing where that is printed beside it. */
  readonly words?: string | undefined
  readonly style?: CSSProperties
  /** What stands on the line, in shares of its width. */
  readonly children: ReactNode
}

/** The line on which a figure is drawn. */
export function ScaledLine({ words, style, children }: ScaledLineProps) {
  return (
    <svg
      className={styles.picture}
      role="img"
      aria-hidden={words === undefined}
      aria-label={words}
      style={style}
    >
      {words !== undefined && <title>{words}</title>}
      <line className={styles.scale} x1="0" x2="100%" y1="50%" y2="50%" />
      {children}
    </svg>
  )
}
