import type { Sound } from '../../sound/sound'
import { STEP_FRAMES, type Steps } from '../../sound/steps'

/**
 * Number of samples, of all channels, that are too large for signed integers of `bits` bits (full scale =
 * 2^(bits-1)) once they are rounded to the nearest, ties to even: they would clip. Above, the largest integer is odd, so
 * that half a step more is too large already; below, half a step more still fits.
 */
export function* samplesOverSteps({ channels }: Sound, bits: number): Steps<number> {
  const fullScale = 2 ** (bits - 1)
  const highest = (fullScale - 0.5) / fullScale
  const lowest = -(fullScale + 0.5) / fullScale
  let over = 0
  for (const [c, samples] of channels.entries()) {
    for (let from = 0; from < samples.length; from += STEP_FRAMES) {
      const to = Math.min(samples.length, from + STEP_FRAMES)
      for (let n = from; n < to; n++) {
        const sample = samples[n] ?? 0
        if (sample >= highest || sample < lowest) over++
      }
      yield (c + to / samples.length) / channels.length
    }
  }
  return over
}
