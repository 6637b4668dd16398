import { hopFrames, sampleRate } from '../song/track'
import { ResonatorFilter, resonate, resonator, sideBranch } from './resonator'

/** How the tract is shaped, one value for each control hop. */
export interface TractControls {
  readonly formantsHz: readonly [Float64Array, Float64Array, Float64Array]
  /** Factor on the bandwidths. */
  readonly damping: Float64Array
  readonly pitchHz: Float64Array
}

// Within the ranges of Klatt 1980: 50 to 80, 70 to 120, 100 to 180 Hz.
const bandwidthsHz = [80, 110, 170] as const
// Above the formants that make the vowel come the resonances of an even tube 15 cm long, (2 n - 1) c / (4 L)
// with c = 350 m/s, all the way to half the sample rate: leave one out and everything below it gets duller.
const tubeSpacingHz = 350 / (2 * 0.15)
const firstUpperFormant = 4
const upperBandwidthShare = 0.07

/**
 * Sends the sound of the glottis through the mouth, in place: a cascade of resonances (Klatt 1980) of which
 * the first three follow the tongue and the rest stand still. A singer opens the mouth so that the first
 * resonance does not fall below a high note; so does this one.
 */
export function shapeByTract(samples: Float64Array, controls: TractControls): void {
  // The fixed resonances come first: behind the moving ones they would amplify the traces of the movement.
  for (let n = firstUpperFormant; (n - 0.5) * tubeSpacingHz < sampleRate / 2; n += 1) {
    const formantHz = (n - 0.5) * tubeSpacingHz
    resonate(samples, formantHz, formantHz * upperBandwidthShare, sampleRate)
  }
  const { damping, pitchHz } = controls
  controls.formantsHz.forEach((track, index) => {
    const bandwidthHz = bandwidthsHz[index] ?? 0
    const shapeAt = (hop: number) => {
      const writtenHz = track[hop] ?? 0
      const formantHz = index === 0 ? Math.max(writtenHz, pitchHz[hop] ?? 0) : writtenHz
      return resonator(formantHz, bandwidthHz * (damping[hop] ?? 1), sampleRate)
    }
    const filter = new ResonatorFilter()
    let start = shapeAt(0)
    for (let from = 0; from < samples.length; from += hopFrames) {
      const end = shapeAt(from / hopFrames + 1)
      filter.process(samples, from, Math.min(samples.length, from + hopFrames), start, end)
      start = end
    }
  })
}

// The tract is no even tube above 4 kHz: the hollows beside the larynx take out a valley (4 to 5 kHz in J. Dang,
// K. Honda, "Acoustic characteristics of the piriform fossa in models and humans", JASA 101(1), 1997: from memory),
// and in recorded voices it reaches to about 7 kHz, before one more formant near 8. Widths are our own.
const valley = { frequencyHz: 5300, resonanceHz: 2600, antiresonanceHz: 1000 } as const
const fossa = { frequencyHz: 4700, resonanceHz: 700, antiresonanceHz: 250 } as const
const upperFormant = { frequencyHz: 8000, resonanceHz: 700, antiresonanceHz: 1100 } as const

/** What the hollows beside the tube add to the sound of the tract, in place. */
export function addSideBranches(samples: Float64Array): void {
  for (const { frequencyHz, resonanceHz, antiresonanceHz } of [fossa, valley, upperFormant]) {
    sideBranch(samples, frequencyHz, resonanceHz, antiresonanceHz, sampleRate)
  }
}
