import type { Want } from './facts/fact-values'
import type { Priority } from './messages'

/** How facts are wanted. */
export interface WantOptions {
  readonly signal: AbortSignal
  readonly priority?: Priority
  /** The stages whose sound will be asked for again. */
  readonly keep?: Want['stages']
  /** Facts that those wanted are worked out from, where they are known. */
  readonly helps?: readonly Want[]
  onProgress?(share: number): void
}

/** Facts that are wanted when there is nothing more urgent. */
export interface Study {
  readonly wants: readonly Want[]
  /** Those that they are worked out from, where they are known. */
  readonly helps: readonly Want[]
}
