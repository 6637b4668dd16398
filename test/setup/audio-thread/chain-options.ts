import type { ChainDoc } from '../../../src/core'

/** Name of the processor that runs a chain on the audio thread. */
export const CHAIN_PROCESSOR = 'chain'

/** What it is made with. */
export interface ChainOptions {
  readonly chain: ChainDoc
  readonly channelCount: number
}
