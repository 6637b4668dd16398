import { type ChainDoc, ChainProcessor } from '../../core'
import { MAX_LOOKAHEAD_MS } from './side'

/** Delay of a chain while it plays, in frames: with the reserve for lookahead, whatever lookahead is set. */
export function chainLatencyFrames(chain: ChainDoc, sampleRate: number): number {
  return new ChainProcessor(chain, { sampleRate, channelCount: 1, maxLookaheadMs: MAX_LOOKAHEAD_MS })
    .latencyFrames
}

/** Whether both chains have the same kinds of stages, in order, and so the same delay while they play. */
export function sameKinds(a: ChainDoc, b: ChainDoc): boolean {
  return a.stages.length === b.stages.length && a.stages.every(({ kind }, k) => kind === b.stages[k]?.kind)
}
