import 'react'

declare module 'react' {
  interface CSSProperties {
    /** How far a slider's line is inked, as a percentage. */
    '--filled'?: string
    /** Colour of the stage that something belongs to. */
    '--stage'?: string
    /** How far down a level's picture its threshold stands, as a percentage. */
    '--threshold'?: string
  }
}
