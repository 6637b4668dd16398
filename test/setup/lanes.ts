import type { StretchTrace } from '../../src/compute/lanes/live-traces'
import { type ChainDoc, chainOf, type FrameRange, TRACE_HOP_FRAMES } from '../../src/core'
import { stageWith } from './chains'

/** A chain with stages of many kinds, some of which reduce gain. */
export function lanesChain(): ChainDoc {
  return chainOf([
    stageWith('equaliser', {}, 'low'),
    stageWith('compressor', { thresholdDb: -30, ratio: 4, lookaheadMs: 5, releaseMs: 200 }, 'hold'),
    stageWith('saturator', { driveDb: 6 }, 'colour'),
    stageWith('compressor', { thresholdDb: -24, ratio: 2 }, 'even'),
    { ...stageWith('compressor', { thresholdDb: -60 }, 'off'), on: false },
    stageWith('de-esser', { thresholdDb: -40, rangeDb: 12 }, 'soften'),
    stageWith('gain', { gainDb: -3 }, 'level'),
  ])
}

/** Those of them that have a lane, in their order. */
export const LANES = ['hold', 'even', 'soften']

/**
 * How far what has come of a lane, the last of each place, is from its trace in a render, dB at most; "not a number"
 * where something of the stretch has not come.
 */
export function furthestDb(
  come: readonly StretchTrace[],
  stageId: string,
  rendered: Float32Array = new Float32Array(0),
  { from, to }: FrameRange,
): number {
  const drawn = new Float32Array(rendered.length).fill(Number.NaN)
  for (const { firstHop, gainDb } of come.filter((one) => one.stageId === stageId))
    drawn.set(gainDb, firstHop)
  let most = 0
  for (let hop = Math.floor(from / TRACE_HOP_FRAMES); hop < Math.ceil(to / TRACE_HOP_FRAMES); hop++)
    most = Math.max(most, Math.abs((drawn[hop] ?? Number.NaN) - (rendered[hop] ?? 0)))
  return most
}
