import 'react'

declare module 'react' {
  interface CSSProperties {
    /** How far a slider's line is inked, as a percentage. */
    '--filled'?: string
    /** Cards side by side. */
    '--columns'?: number
    /** Colour of the stage that something belongs to. */
    '--stage'?: string
  }
}
