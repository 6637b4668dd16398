import { whiteNoise } from '../../core/primitives'
import { rms } from '../song/levels'
import type { Place } from '../song/phonemes'
import { hopFrames, sampleRate } from '../song/track'
import { ResonatorFilter, resonate, resonator } from './resonator'

interface Resonance {
  readonly frequencyHz: number
  readonly bandwidthHz: number
}

/** White noise differenced `differences` times, which takes its bottom out, and then resonating. */
interface Hiss {
  readonly differences: number
  /** What makes the lower edge of its spectrum, and slides as the mouth opens. */
  readonly edge: Resonance
  readonly above: Resonance
}

// Fitted so that peak, mean and variance of the spectrum up to 11 kHz are those measured by A. Jongman,
// R. Wayland, S. Wong, JASA 108(3), 2000: s 6.8 kHz (women), 6133 Hz, 2.92 MHz; sh 3820 Hz, 4229 Hz, 3.38 MHz;
// f 7733 Hz, 5108 Hz, 6.37 MHz.
const hisses: Readonly<Record<Place, Hiss>> = {
  alveolar: {
    differences: 2,
    edge: { frequencyHz: 3425, bandwidthHz: 1621 },
    above: { frequencyHz: 7000, bandwidthHz: 2426 },
  },
  palatal: {
    differences: 2,
    edge: { frequencyHz: 4092, bandwidthHz: 3889 },
    above: { frequencyHz: 1156, bandwidthHz: 2426 },
  },
  labial: {
    differences: 0,
    edge: { frequencyHz: 3385, bandwidthHz: 3806 },
    above: { frequencyHz: 7875, bandwidthHz: 1336 },
  },
}

/** How far the lower edge is from where it usually is, Hz, at a share from 0 to 1 of the hiss. */
export type EdgeSlide = (share: number) => number

/**
 * `frames` of the hiss made at `place`, with mean square 1 in its middle half; its lower edge stands still unless
 * `slide` is given.
 */
export function frication(place: Place, frames: number, seed: number, slide?: EdgeSlide): Float64Array {
  const samples = whiteNoise(frames, seed)
  const { differences, edge, above } = hisses[place]
  for (let pass = 0; pass < differences; pass += 1) {
    let last = 0
    for (let i = 0; i < frames; i += 1) {
      const sample = samples[i] ?? 0
      samples[i] = sample - last
      last = sample
    }
  }
  resonate(samples, above.frequencyHz, above.bandwidthHz, sampleRate)
  if (slide) resonateSliding(samples, edge, slide)
  else resonate(samples, edge.frequencyHz, edge.bandwidthHz, sampleRate)
  const scale = 1 / rms(samples.subarray(Math.floor(frames / 4), Math.ceil((3 * frames) / 4)))
  for (let i = 0; i < frames; i += 1) samples[i] = (samples[i] ?? 0) * scale
  return samples
}

function resonateSliding(samples: Float64Array, edge: Resonance, slide: EdgeSlide): void {
  const filter = new ResonatorFilter()
  const shapeAt = (frame: number) =>
    resonator(edge.frequencyHz + slide(frame / samples.length), edge.bandwidthHz, sampleRate)
  let start = shapeAt(0)
  for (let from = 0; from < samples.length; from += hopFrames) {
    const to = Math.min(samples.length, from + hopFrames)
    const end = shapeAt(to)
    filter.process(samples, from, to, start, end)
    start = end
  }
}
