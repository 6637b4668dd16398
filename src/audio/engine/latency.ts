import { type ChainDoc, ChainProcessor } from '../../core'
import { LOOKAHEAD_RESERVE_MS } from './side'

/** Delay of a chain while it plays, in frames: with the reserve for lookahead, whatever lookahead is set. */
export function chainLatencyFrames(chain: ChainDoc, sampleRate: number): number {
  return new ChainProcessor(chain, { sampleRate, channelCount: 1, lookaheadReserveMs: LOOKAHEAD_RESERVE_MS })
    .latencyFrames
}
