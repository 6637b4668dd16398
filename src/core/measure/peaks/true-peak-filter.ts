const TAPS = 49

/** Reads one point between two samples: the dot product of `weights` with the samples around that gap. */
export interface PeakPhase {
  /** As many samples before the gap as behind it, the earliest first. */
  readonly weights: Float64Array
  /** Sum of the absolute weights of all but the two samples next to the gap. */
  readonly farGain: number
  /** The same of all but the two samples on either side. */
  readonly furtherGain: number
}

/** The filters that read a sound between its samples, at equal distances within each gap. */
export interface PeakFilter {
  readonly phases: readonly PeakPhase[]
  /** Samples in each dot product. */
  readonly taps: number
  /** Largest sum of absolute weights: no point exceeds the largest sample around it by more. */
  readonly largestGain: number
}

/** How many times a sound must be oversampled for its true peak (ITU-R BS.1770-5, Annex 2): 4, 2 or 1. */
export function peakOversampling(sampleRate: number): number {
  if (sampleRate < 88_200) return 4
  return sampleRate < 176_400 ? 2 : 1
}

/**
 * Interpolation by `factor` with a sinc under a 49-point Hann window, the filter of the general-purpose
 * library libebur128. It passes through the samples themselves, so only the points between are filtered. The
 * recommendation asks for a filter "such as" its 48-tap table; this one reads the signals of EBU Tech 3341
 * closer to their exact peaks.
 */
export function peakFilter(factor: number): PeakFilter {
  const middle = (TAPS - 1) / 2
  const taps = (TAPS - 1) / factor
  const phases = Array.from({ length: factor - 1 }, (_, phase) => {
    const weights = Float64Array.from({ length: taps }, (_, tap) => {
      // Tap 0 weighs the earliest sample, which lies taps / 2 - 1 samples before the gap.
      const distance = (taps / 2 - 1 - tap) * factor + phase + 1
      const hann = 0.5 * (1 + Math.cos((Math.PI * distance) / middle))
      return (hann * Math.sin((Math.PI * distance) / factor)) / ((Math.PI * distance) / factor)
    })
    const gainBeyond = (reach: number) =>
      absoluteSum(weights.filter((_, tap) => tap < taps / 2 - reach || tap >= taps / 2 + reach))
    return { weights, farGain: gainBeyond(1), furtherGain: gainBeyond(2) }
  })
  return { phases, taps, largestGain: Math.max(1, ...phases.map(({ weights }) => absoluteSum(weights))) }
}

function absoluteSum(values: Float64Array): number {
  return values.reduce((sum, value) => sum + Math.abs(value), 0)
}
