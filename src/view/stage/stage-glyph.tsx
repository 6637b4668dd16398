import { stageColour } from './stage-colour'
import styles from './stage-glyph.module.css'

interface StageGlyphProps {
  /** Position in the chain, from 0. */
  readonly index: number
  readonly on: boolean
  /** What is written in the ring: the stage's number, unless it is a band's. */
  readonly text?: string
}

/** A stage's number in a ring: solid while it is on, dashed while it is off. */
export function StageGlyph({ index, on, text = String(index + 1) }: StageGlyphProps) {
  return (
    <span className={on ? styles.on : styles.off} style={{ '--stage': stageColour(index) }}>
      {text}
    </span>
  )
}
