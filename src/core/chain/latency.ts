import { stageLatencyFrames } from '../stages/stage-facts'
import type { ChainDoc } from './chain-doc'

/**
 * Frames by which a chain delays, whatever is switched on: the sum over its stages, known without running them.
 * @param maxLookaheadMs delay that each stage reserves for lookahead; without it, the lookahead that is set
 */
export function chainLatencyFrames(
  { stages }: Pick<ChainDoc, 'stages'>,
  sampleRate: number,
  maxLookaheadMs?: number,
): number {
  return stages.reduce((frames, stage) => frames + stageLatencyFrames(stage, sampleRate, maxLookaheadMs), 0)
}
