import type { ReactNode } from 'react'
import styles from './lane.module.css'

/** What stands along the take, with its words beside it. */
export function LaneRow({ label, children }: { readonly label: ReactNode; readonly children: ReactNode }) {
  return (
    <div className={styles.lane}>
      <div className={styles.label}>{label}</div>
      {children}
    </div>
  )
}

interface LaneProps {
  readonly label: ReactNode
  /** One sentence on what the picture shows. */
  readonly sentence: string
  readonly width: number
  readonly height: number
  readonly children: ReactNode
}

/** One picture along the take, with its words beside it. */
export function Lane({ label, sentence, width, height, children }: LaneProps) {
  return (
    <LaneRow label={label}>
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
