import type { CSSProperties, ReactNode } from 'react'
import styles from './lane.module.css'
import type { ScaleTick } from './scale-ticks'

interface LaneRowProps {
  readonly label: ReactNode
  /** Not read out: the sentence of the picture tells it. */
  readonly ticks?: readonly ScaleTick[] | undefined
  /** Printed at the middle of the scale. */
  readonly unit?: string | undefined
  readonly children: ReactNode
}

/** A picture along the take, with its words beside it, and a scale at its edge whose lines run through it. */
export function LaneRow({ label, ticks = [], unit, children }: LaneRowProps) {
  return (
    <div className={styles.lane}>
      <div className={styles.label}>{label}</div>
      <div className={styles.drawing}>
        {ticks.map(({ y, label }) => (
          <i key={label} className={styles.line} style={{ top: y }} />
        ))}
        {children}
      </div>
      <div className={styles.scale} aria-hidden="true">
        {ticks.map(({ y, label }) => (
          <span key={label} style={{ top: y }}>
            {label}
          </span>
        ))}
        {unit && <span className={styles.unit}>{unit}</span>}
      </div>
    </div>
  )
}

interface LanePictureProps {
  /** One sentence on what the picture shows. */
  readonly sentence: string
  readonly width: number
  readonly height: number
  readonly children: ReactNode
}

/** The picture of a lane that is drawn in SVG. */
export function LanePicture({ sentence, width, height, children }: LanePictureProps) {
  return (
    <svg
      className={styles.picture}
      role="img"
      aria-label={sentence}
      height={height}
      viewBox={`0 0 ${Math.max(1, width)} ${Math.max(1, height)}`}
      preserveAspectRatio="none"
    >
      {children}
    </svg>
  )
}

interface MaximumMarkProps {
  /** Its place in the picture, CSS pixels. */
  readonly x: number
  readonly y: number
  readonly width: number
  readonly style?: CSSProperties
  /** What it reaches, printed beside it. */
  readonly label?: string
}

/** A dot where a picture reaches furthest. Nothing where that is not seen. */
export function MaximumMark({ x, y, width, style, label }: MaximumMarkProps) {
  if (!(x >= 0 && x <= width)) return null
  return (
    <span className={styles.maximum} style={{ ...style, left: x, top: y }} aria-hidden="true">
      {label && <span className={x > width / 2 ? styles.before : styles.behind}>{label}</span>}
    </span>
  )
}
