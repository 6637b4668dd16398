import { type Biquad, halfAngleSine, magnitudeSquared, scaled } from '../../dsp/filters/biquad'
import { MeasureError } from '../error'

/** The two sections of the K-weighting filter: the head's shelf, then the high-pass. */
export interface KWeighting {
  readonly shelf: Biquad
  readonly highPass: Biquad
}

// The analogue prototypes whose bilinear transforms at 48 kHz are the coefficients printed in
// ITU-R BS.1770-5, Annex 1, Tables 1 and 2 (to 1e-14). The recommendation gives no prototypes, it only
// asks other rates for the same frequency response; these figures were fitted to the tables and are those
// of the general-purpose library libebur128.
const SHELF_HZ = 1681.974450955533
const SHELF_Q = 0.7071752369554196
const SHELF_GAIN_DB = 3.999843853973347
const SHELF_MIDDLE_EXPONENT = 0.4996667741545416
const HIGH_PASS_HZ = 38.13547087602444
const HIGH_PASS_Q = 0.5003270373238773

const TABLE_RATE = 48_000
/** Where the recommendation calibrates: "-0.691 cancels out the K-weighting gain for 997 Hz". */
const CALIBRATION_HZ = 997

export const LOWEST_RATE = 8_000
export const HIGHEST_RATE = 192_000

/**
 * The K-weighting filter of ITU-R BS.1770-5, Annex 1, for any sample rate.
 *
 * The bilinear transform leaves the high-pass's numerator at 1, -2, 1, so its pass-band gain would wander by
 * up to 0.4 dB between 8 and 192 kHz. The high-pass is therefore scaled so that the whole filter has, at
 * every rate, the gain at 997 Hz that it has at 48 kHz; at 48 kHz the scale is exactly 1.
 *
 * @param sampleRate Hz, 8000 to 192000
 * @throws MeasureError `sample-rate` outside that range
 */
export function kWeighting(sampleRate: number): KWeighting {
  if (!(sampleRate >= LOWEST_RATE && sampleRate <= HIGHEST_RATE)) {
    throw new MeasureError(
      'sample-rate',
      `sample rate ${sampleRate} Hz (expected ${LOWEST_RATE} to ${HIGHEST_RATE})`,
    )
  }
  const shelf = shelfSection(sampleRate)
  const highPass = highPassSection(sampleRate)
  if (sampleRate === TABLE_RATE) return { shelf, highPass }
  const scale = gainAt997(shelfSection(TABLE_RATE), highPassSection(TABLE_RATE), TABLE_RATE)
  return { shelf, highPass: scaled(highPass, scale / gainAt997(shelf, highPass, sampleRate)) }
}

function gainAt997(shelf: Biquad, highPass: Biquad, sampleRate: number): number {
  const phi = halfAngleSine(CALIBRATION_HZ, sampleRate)
  return Math.sqrt(magnitudeSquared(shelf, phi) * magnitudeSquared(highPass, phi))
}

function shelfSection(sampleRate: number): Biquad {
  const k = Math.tan((Math.PI * SHELF_HZ) / sampleRate)
  const top = 10 ** (SHELF_GAIN_DB / 20)
  const middle = top ** SHELF_MIDDLE_EXPONENT
  const a0 = 1 + k / SHELF_Q + k * k
  return {
    b0: (top + (middle * k) / SHELF_Q + k * k) / a0,
    b1: (2 * (k * k - top)) / a0,
    b2: (top - (middle * k) / SHELF_Q + k * k) / a0,
    a1: (2 * (k * k - 1)) / a0,
    a2: (1 - k / SHELF_Q + k * k) / a0,
  }
}

function highPassSection(sampleRate: number): Biquad {
  const k = Math.tan((Math.PI * HIGH_PASS_HZ) / sampleRate)
  const a0 = 1 + k / HIGH_PASS_Q + k * k
  return { b0: 1, b1: -2, b2: 1, a1: (2 * (k * k - 1)) / a0, a2: (1 - k / HIGH_PASS_Q + k * k) / a0 }
}
