/** The static curve of a compressor. Levels in dB, ratio 1 to Infinity, knee = full width around the threshold. */
export interface StaticCurve {
  readonly thresholdDb: number
  readonly ratio: number
  readonly kneeDb: number
}

/**
 * Gain reduction in dB (0 or more) that the static curve asks for at an input level.
 * Source: D. Giannoulis, M. Massberg, J. D. Reiss, "Digital Dynamic Range Compressor Design: A Tutorial and
 * Analysis", J. Audio Eng. Soc. 60(6), 2012: gain computer with a quadratic knee, as x - y.
 */
export function reductionDb(levelDb: number, { thresholdDb, ratio, kneeDb }: StaticCurve): number {
  return reductionAt(levelDb - thresholdDb, slopeOfRatio(ratio), kneeDb)
}

/** dB of reduction for each dB over the threshold: 0 at 1:1, 1 at infinity. */
export function slopeOfRatio(ratio: number): number {
  return 1 - 1 / ratio
}

/** Reduction in dB at `overDb` above the threshold. The form the processors' inner loops use. */
export function reductionAt(overDb: number, slope: number, kneeDb: number): number {
  const intoKnee = overDb + kneeDb / 2
  if (intoKnee <= 0) return 0
  return intoKnee < kneeDb ? (slope * intoKnee * intoKnee) / (2 * kneeDb) : slope * overDb
}
