import { type FrameRange, integratedLoudnessOf, SUB_BLOCKS_PER_SECOND } from '../../core'
import type { MatchingGains } from '../evidence'

/** What is known of the loudness of one side. */
export interface SideLoudness {
  /** K-weighted energies of its sub-blocks of 10 ms. */
  readonly energies: Float64Array
  /** Over the whole take, LUFS; null where not measurable. */
  readonly integratedLufs: number | null
}

/**
 * Gains that bring two sides to the same integrated loudness by turning the louder one down: never up, so that
 * matching cannot make anything louder than it was. Measured over `loop` where that is long enough to measure.
 */
export function matchingGains(
  bypassed: SideLoudness,
  processed: SideLoudness,
  loop: FrameRange | null,
  sampleRate: number,
): MatchingGains {
  const overLoop =
    loop && gainsFor(loudnessIn(bypassed, loop, sampleRate), loudnessIn(processed, loop, sampleRate))
  if (overLoop) return { ...overLoop, measuredOver: 'loop' }
  const overTake = gainsFor(bypassed.integratedLufs, processed.integratedLufs)
  return overTake
    ? { ...overTake, measuredOver: 'take' }
    : { bypassedDb: 0, processedDb: 0, measuredOver: 'nothing' }
}

/** Of a loop: energies are taken to be spread evenly within a sub-block, so that it can begin anywhere. */
function loudnessIn({ energies }: SideLoudness, { from, to }: FrameRange, sampleRate: number): number | null {
  const blocks = (frames: number) => (frames * SUB_BLOCKS_PER_SECOND) / sampleRate
  const first = Math.floor(blocks(from))
  const share = blocks(from) - first
  // As many as if the loop were measured by itself: one more or less could be a whole block of 400 ms.
  const inLoop = Float64Array.from({ length: Math.floor(blocks(to - from)) }, (_, k) => {
    const energy = energies[first + k] ?? 0
    return energy + share * ((energies[first + k + 1] ?? 0) - energy)
  })
  return integratedLoudnessOf(inLoop, sampleRate)
}

function gainsFor(bypassedLufs: number | null, processedLufs: number | null) {
  if (bypassedLufs === null || processedLufs === null) return null
  const quieter = Math.min(bypassedLufs, processedLufs)
  return { bypassedDb: quieter - bypassedLufs, processedDb: quieter - processedLufs }
}
