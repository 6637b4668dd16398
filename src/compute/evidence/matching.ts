import { excerpt, integratedLoudness, type Sound } from '../../core'
import type { MatchingGains } from './evidence'

/** A stretch of the take in frames, end not included. */
export interface FrameRange {
  readonly from: number
  readonly to: number
}

/** Integrated loudness of either side over the whole take, LUFS; null where not measurable. */
export interface TakeLoudness {
  readonly without: number | null
  readonly with: number | null
}

/**
 * Gains that bring two sides to the same integrated loudness by turning the louder one down: never up, so that
 * matching cannot make anything louder than it was. Measured over `loop` where that is long enough to measure.
 * @param takeLufs where it is known already, so that it is not measured again
 */
export function matchingGains(
  without: Sound,
  withSide: Sound,
  loop: FrameRange | null,
  takeLufs: TakeLoudness = {
    without: integratedLoudness(without),
    with: integratedLoudness(withSide),
  },
): MatchingGains {
  if (loop) {
    const overLoop = gainsFor(
      integratedLoudness(excerpt(without, loop.from, loop.to)),
      integratedLoudness(excerpt(withSide, loop.from, loop.to)),
    )
    if (overLoop) return { ...overLoop, measuredOver: 'loop' }
  }
  const overTake = gainsFor(takeLufs.without, takeLufs.with)
  return overTake
    ? { ...overTake, measuredOver: 'take' }
    : { withoutDb: 0, withDb: 0, measuredOver: 'nothing' }
}

function gainsFor(withoutLufs: number | null, withLufs: number | null) {
  if (withoutLufs === null || withLufs === null) return null
  const quieter = Math.min(withoutLufs, withLufs)
  return { withoutDb: quieter - withoutLufs, withDb: quieter - withLufs }
}
