/**
 * Slope of the glottal flow at `phase` (0 to 1) of one cycle, per cycle, after the trigonometric pulse "C" of
 * A. E. Rosenberg, "Effect of Glottal Pulse Shape on the Quality of Natural Vowels", JASA 49(2), 1971: flow
 * (1 - cos(pi t / rise)) / 2 while the glottis opens, cos(pi (t - rise) / (2 fall)) while it closes, then 0.
 * The slope is taken because the lips radiate the derivative of the flow.
 * @param rise,fall shares of the cycle, above 0, together below 1
 */
export function pulseSlope(phase: number, rise: number, fall: number): number {
  if (phase < rise) return (Math.PI / (2 * rise)) * Math.sin((Math.PI * phase) / rise)
  if (phase < rise + fall) return (-Math.PI / (2 * fall)) * Math.sin((Math.PI * (phase - rise)) / (2 * fall))
  return 0
}

/** Values of one cycle in a pulse table. */
export const tableLength = 2048
/** Values of the cycle that is analysed: so many that its own folded harmonics are below -60 dB. */
const analysisLength = 8192
/** Tables hold this many harmonics, most first. */
const harmonicCounts = [160, 112, 80, 56, 40, 28, 20] as const

/** One cycle of the pulse for low notes to high ones, each without harmonics that would fold over. */
export type PulseTables = readonly { readonly harmonics: number; readonly samples: Float64Array }[]

/**
 * Tables of the pulse with the given shares, all scaled alike: the full pulse has mean square 1. Each cycle starts
 * as the glottis shuts, which is what excites the mouth most: so two pulses mix without cancelling each other.
 */
export function pulseTables(rise: number, fall: number): PulseTables {
  const most = harmonicCounts[0]
  const { cosines, sines } = fourierSeries(rise, fall, most)
  const power = cosines.reduce((sum, cosine, k) => sum + (cosine ** 2 + (sines[k] ?? 0) ** 2) / 2, 0)
  const { cosine, sine } = circle(tableLength)
  return harmonicCounts.map((harmonics) => {
    const samples = new Float64Array(tableLength)
    for (let k = 1; k <= harmonics; k += 1) {
      const even = (cosines[k] ?? 0) / Math.sqrt(power)
      const odd = (sines[k] ?? 0) / Math.sqrt(power)
      for (let i = 0; i < tableLength; i += 1) {
        const angle = (i * k) % tableLength
        samples[i] = (samples[i] ?? 0) + even * (cosine[angle] ?? 0) + odd * (sine[angle] ?? 0)
      }
    }
    return { harmonics, samples }
  })
}

/** Fourier coefficients 1 to `most` of the slope; 0, the direct current, is left at 0. */
function fourierSeries(rise: number, fall: number, most: number) {
  const { cosine, sine } = circle(analysisLength)
  const cosines = new Float64Array(most + 1)
  const sines = new Float64Array(most + 1)
  for (let i = 0; i < analysisLength; i += 1) {
    const slope = (2 / analysisLength) * pulseSlope((i / analysisLength + rise + fall) % 1, rise, fall)
    if (slope === 0) continue
    for (let k = 1; k <= most; k += 1) {
      const angle = (i * k) % analysisLength
      cosines[k] = (cosines[k] ?? 0) + slope * (cosine[angle] ?? 0)
      sines[k] = (sines[k] ?? 0) + slope * (sine[angle] ?? 0)
    }
  }
  return { cosines, sines }
}

/** Cosine and sine at `steps` places around the circle. */
function circle(steps: number) {
  const angle = (index: number) => (2 * Math.PI * index) / steps
  return {
    cosine: Float64Array.from({ length: steps }, (_, index) => Math.cos(angle(index))),
    sine: Float64Array.from({ length: steps }, (_, index) => Math.sin(angle(index))),
  }
}
