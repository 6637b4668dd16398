const STEPS = 2 ** 15
/** What some decoders divide positive samples by, so that the highest step becomes exactly 1. */
const POSITIVE_STEPS = STEPS - 1

/** How far from a whole step single precision may put a sample; four times its rounding error at full scale. */
const TOLERANCE = 2 ** -8

/**
 * Brings sound decoded from 16 bits back to its own steps of 2^-15, in place. Browsers do not agree on the scale:
 * Chromium 156 was measured to divide negative samples by 32768 and positive ones by 32767, which bends the waveform
 * a little and puts every positive sample above half scale on the next step when 16 bits are written again. Sound that
 * was not scaled like that is left alone.
 */
export function restoreSixteenBitSteps(channels: readonly Float32Array[]): void {
  if (!channels.some(leavesSteps) || !channels.every(fitsPositiveSteps)) return
  for (const samples of channels) {
    for (let i = 0; i < samples.length; i++) {
      const x = samples[i] ?? 0
      if (x > 0) samples[i] = Math.round(x * POSITIVE_STEPS) / STEPS
    }
  }
}

/** Whether any sample lies off the steps of 2^-15, or on the one step too many, +1. */
function leavesSteps(samples: Float32Array): boolean {
  return samples.some((x) => x >= 1 || !Number.isInteger(x * STEPS))
}

/** Whether positive samples lie on steps of 1/32767 and negative ones on steps of 1/32768. */
function fitsPositiveSteps(samples: Float32Array): boolean {
  return samples.every((x) => {
    const steps = x * (x > 0 ? POSITIVE_STEPS : STEPS)
    return Math.abs(steps - Math.round(steps)) <= TOLERANCE
  })
}
