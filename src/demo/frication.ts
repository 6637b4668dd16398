import type { Place } from './phonemes'
import { whiteNoise } from './random'
import { resonate } from './resonator'
import { sampleRate } from './track'

/** A hiss: white noise differenced `differences` times, which takes its bottom out, and then resonating. */
interface Hiss {
  readonly differences: number
  readonly resonances: readonly { readonly frequencyHz: number; readonly bandwidthHz: number }[]
}

// Tuned so that the peaks and the spectral means come out as measured by Jongman, Wayland and Wong (JASA
// 108(3), 2000): s near 6.8 kHz, mean 6.1 kHz; sh near 3.8 kHz, mean 4.2 kHz; f flat, peak near 7.7 kHz.
const hisses: Readonly<Record<Place, Hiss>> = {
  alveolar: {
    differences: 2,
    resonances: [
      { frequencyHz: 6800, bandwidthHz: 1500 },
      { frequencyHz: 5200, bandwidthHz: 2600 },
      { frequencyHz: 8600, bandwidthHz: 2600 },
    ],
  },
  palatal: {
    differences: 2,
    resonances: [
      { frequencyHz: 3800, bandwidthHz: 900 },
      { frequencyHz: 5600, bandwidthHz: 2400 },
    ],
  },
  labial: { differences: 1, resonances: [{ frequencyHz: 7700, bandwidthHz: 7000 }] },
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
  let power = 0
  for (const sample of samples) power += sample * sample
  const scale = 1 / Math.sqrt(power / Math.max(1, frames))
  return samples.map((sample) => sample * scale)
}
