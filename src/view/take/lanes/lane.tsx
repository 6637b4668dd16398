import type { ReactNode } from 'react'
import styles from './lane.module.css'

/** What the upper and the lower edge of a lane stand for, as printed there. */
export interface LaneScale {
  readonly top?: string | undefined
  readonly bottom?: string | undefined
}

interface LaneRowProps {
  readonly label: ReactNode
  /** Not read out: the sentence of the picture tells it. */
  readonly scale?: LaneScale | undefined
  readonly children: ReactNode
}

/** A picture along the take, with its words beside it and a scale at its edge. */
export function LaneRow({ label, scale, children }: LaneRowProps) {
  return (
    <div className={styles.lane}>
      <div className={styles.label}>{label}</div>
      <div className={styles.drawing}>
        {children}
        {scale?.top && (
          <span className={`${styles.scale} ${styles.top}`} aria-hidden="true">
            {scale.top}
          </span>
        )}
        {scale?.bottom && (
          <span className={`${styles.scale} ${styles.bottom}`} aria-hidden="true">
            {scale.bottom}
          </span>
        )}
      </div>
    </div>
  )
}

interface LaneProps {
  readonly label: ReactNode
  readonly scale?: LaneScale | undefined
  /** One sentence on what the picture shows. */
  readonly sentence: string
  readonly width: number
  readonly height: number
  readonly children: ReactNode
}

/** A lane that is drawn in SVG. */
export function Lane({ label, scale, sentence, width, height, children }: LaneProps) {
  return (
    <LaneRow label={label} scale={scale}>
      <svg
        className={styles.picture}
        role="img"
        aria-label={sentence}
        height={height}
        viewBox={`0 0 ${Math.max(1, width)} ${height}`}
        preserveAspectRatio="none"
      >
        {children}
      </svg>
    </LaneRow>
  )
}
