import { memo } from 'react'
import styles from './stage-glyph.module.css'

interface StageGlyphProps {
  /** The stage's own, as styles take it. */
  readonly colour: string
  /** Position in the chain, from 0. */
  readonly index: number
  readonly on: boolean
  /** What is written in the ring: the stage's number, unless it is a band's. */
  readonly text?: string
}

/** A stage's number in a ring: solid while it is on, dashed while it is off. */
export const StageGlyph = memo(({ colour, index, on, text = String(index + 1) }: StageGlyphProps) => (
  <span className={on ? styles.on : styles.off} style={{ '--stage': colour }}>
    {text}
  </span>
))
