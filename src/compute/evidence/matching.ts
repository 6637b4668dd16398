import { excerpt, integratedLoudness, type Sound } from '../../core'
import type { MatchingGains } from './evidence'

/** A stretch of the take in frames, end not included. */
export interface FrameRange {
  readonly from: number
  readonly to: number
}

/** Integrated loudness of either side over the whole take, LUFS; null where not measurable. */
export interface TakeLoudness {
  readonly bypassed: number | null
  readonly processed: number | null
}

/**
 * Gains that bring two sides to the same integrated loudness by turning the louder one down: never up, so that
 * matching cannot make anything louder than it was. Measured over `loop` where that is long enough to measure.
 * @param takeLufs where it is known already, so that it is not measured again
 */
export function matchingGains(
  bypassed: Sound,
  processed: Sound,
  loop: FrameRange | null,
  takeLufs: TakeLoudness = {
    bypassed: integratedLoudness(bypassed),
    processed: integratedLoudness(processed),
  },
): MatchingGains {
  if (loop) {
    const overLoop = gainsFor(
      integratedLoudness(excerpt(bypassed, loop.from, loop.to)),
      integratedLoudness(excerpt(processed, loop.from, loop.to)),
    )
    if (overLoop) return { ...overLoop, measuredOver: 'loop' }
  }
  const overTake = gainsFor(takeLufs.bypassed, takeLufs.processed)
  return overTake
    ? { ...overTake, measuredOver: 'take' }
    : { bypassedDb: 0, processedDb: 0, measuredOver: 'nothing' }
}

function gainsFor(bypassedLufs: number | null, processedLufs: number | null) {
  if (bypassedLufs === null || processedLufs === null) return null
  const quieter = Math.min(bypassedLufs, processedLufs)
  return { bypassedDb: quieter - bypassedLufs, processedDb: quieter - processedLufs }
}
