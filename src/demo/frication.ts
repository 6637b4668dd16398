import { whiteNoise } from '../core/dsp/random'
import type { Place } from './phonemes'
import { resonate } from './resonator'
import { rms } from './room'
import { sampleRate } from './track'

/** A hiss: white noise differenced `differences` times, which takes its bottom out, and then resonating. */
interface Hiss {
  readonly differences: number
  readonly resonances: readonly { readonly frequencyHz: number; readonly bandwidthHz: number }[]
}

// Fitted so that peak, mean and variance of the spectrum up to 11 kHz are those measured by A. Jongman,
// R. Wayland, S. Wong, JASA 108(3), 2000: s 6.8 kHz (women), 6133 Hz, 2.92 MHz; sh 3820 Hz, 4229 Hz, 3.38 MHz;
// f 7733 Hz, 5108 Hz, 6.37 MHz.
const hisses: Readonly<Record<Place, Hiss>> = {
  alveolar: {
    differences: 2,
    resonances: [
      { frequencyHz: 7000, bandwidthHz: 2426 },
      { frequencyHz: 3425, bandwidthHz: 1621 },
    ],
  },
  palatal: {
    differences: 1,
    resonances: [
      { frequencyHz: 5056, bandwidthHz: 4971 },
      { frequencyHz: 1665, bandwidthHz: 5260 },
    ],
  },
  labial: {
    differences: 0,
    resonances: [
      { frequencyHz: 7875, bandwidthHz: 1336 },
      { frequencyHz: 3385, bandwidthHz: 3806 },
    ],
  },
}

/** `frames` of the hiss made at `place`, with mean square 1. */
export function frication(place: Place, frames: number, seed: number): Float64Array {
  const samples = whiteNoise(frames, seed)
  const { differences, resonances } = hisses[place]
  for (let pass = 0; pass < differences; pass += 1) {
    let last = 0
    for (let i = 0; i < frames; i += 1) {
      const sample = samples[i] ?? 0
      samples[i] = sample - last
      last = sample
    }
  }
  for (const { frequencyHz, bandwidthHz } of resonances) {
    resonate(samples, frequencyHz, bandwidthHz, sampleRate)
  }
  const scale = 1 / rms(samples)
  for (let i = 0; i < frames; i += 1) samples[i] = (samples[i] ?? 0) * scale
  return samples
}
