import type { ReactNode } from 'react'
import styles from './picture-frame.module.css'

interface PictureFrameProps {
  readonly width: number
  readonly height: number
  /** The sentence that says what the picture shows. */
  readonly label: string
  readonly caption: string
  readonly children: ReactNode
}

/** A small picture at its natural size, with a line under it. */
export function PictureFrame({ width, height, label, caption, children }: PictureFrameProps) {
  return (
    <figure className={styles.figure}>
      <svg
        className={styles.picture}
        viewBox={`0 0 ${width} ${height}`}
        width={width}
        height={height}
        role="img"
        aria-label={label}
      >
        {children}
      </svg>
      <figcaption className={styles.caption}>{caption}</figcaption>
    </figure>
  )
}
