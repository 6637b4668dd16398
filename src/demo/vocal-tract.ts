import { ResonatorFilter, resonate, resonator } from './resonator'
import { hopFrames, sampleRate } from './track'

/** How the tract is shaped, one value for each control hop. */
export interface TractControls {
  readonly formantsHz: readonly [Float64Array, Float64Array, Float64Array]
  /** Factor on the bandwidths. */
  readonly damping: Float64Array
  readonly pitchHz: Float64Array
}

// Within the ranges of Klatt 1980: 50 to 80, 70 to 120, 100 to 180 Hz.
const bandwidthsHz = [80, 110, 170] as const
// Above the formants that make the vowel: the resonances of an even tube 15 cm long, with the losses growing.
// They stand for the "higher-pole correction" that a synthesiser of 10 kHz does not need.
const upperFormantsHz = [4080, 5250, 6420, 7580, 8750, 9920, 11080] as const
const upperBandwidthShare = 0.07

/**
 * Sends the sound of the glottis through the mouth, in place: a cascade of resonances (Klatt 1980) of which
 * the first three follow the tongue and the rest stand still. A singer opens the mouth so that the first
 * resonance does not fall below a high note; so does this one.
 */
export function shapeByTract(samples: Float64Array, controls: TractControls): void {
  controls.formantsHz.forEach((track, index) => {
    const filter = new ResonatorFilter()
    const bandwidthHz = bandwidthsHz[index] ?? 0
    for (let hop = 0; hop * hopFrames < samples.length; hop += 1) {
      const written = track[hop] ?? 0
      const formantHz = index === 0 ? Math.max(written, controls.pitchHz[hop] ?? 0) : written
      const coefficients = resonator(formantHz, bandwidthHz * (controls.damping[hop] ?? 1), sampleRate)
      const from = hop * hopFrames
      filter.process(samples, from, Math.min(samples.length, from + hopFrames), coefficients)
    }
  })
  for (const formantHz of upperFormantsHz) {
    resonate(samples, formantHz, formantHz * upperBandwidthShare, sampleRate)
  }
}
