import 'react'

declare module 'react' {
  interface CSSProperties {
    /** How far a slider's line is inked, as a percentage. */
    '--filled'?: string
    /** Heights that the lanes of a take keep: the least, and that where nothing gives them one. */
    '--least-room'?: string
    '--usual-room'?: string
    /** Colour of the stage that something belongs to. */
    '--stage'?: string
    /** How far down a level's picture its threshold stands, as a percentage. */
    '--threshold'?: string
  }
}
