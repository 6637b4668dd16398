import { MeasureError } from './error'

/** One second-order section, y = b0 x + b1 x1 + b2 x2 - a1 y1 - a2 y2. */
export interface Section {
  readonly b0: number
  readonly b1: number
  readonly b2: number
  readonly a1: number
  readonly a2: number
}

/** The two sections of the K-weighting filter: the head's shelf, then the high-pass. */
export interface KWeighting {
  readonly shelf: Section
  readonly highPass: Section
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
  const scale =
    (sectionGain(shelfSection(TABLE_RATE), CALIBRATION_HZ, TABLE_RATE) *
      sectionGain(highPassSection(TABLE_RATE), CALIBRATION_HZ, TABLE_RATE)) /
    (sectionGain(shelf, CALIBRATION_HZ, sampleRate) * sectionGain(highPass, CALIBRATION_HZ, sampleRate))
  return { shelf, highPass: { ...highPass, b0: scale, b1: -2 * scale, b2: scale } }
}

/** Linear gain of `section` at `frequencyHz`. */
export function sectionGain(section: Section, frequencyHz: number, sampleRate: number): number {
  const w = (2 * Math.PI * frequencyHz) / sampleRate
  const [c1, s1, c2, s2] = [Math.cos(w), Math.sin(w), Math.cos(2 * w), Math.sin(2 * w)]
  const { b0, b1, b2, a1, a2 } = section
  const numerator = Math.hypot(b0 + b1 * c1 + b2 * c2, b1 * s1 + b2 * s2)
  return numerator / Math.hypot(1 + a1 * c1 + a2 * c2, a1 * s1 + a2 * s2)
}

function shelfSection(sampleRate: number): Section {
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

function highPassSection(sampleRate: number): Section {
  const k = Math.tan((Math.PI * HIGH_PASS_HZ) / sampleRate)
  const a0 = 1 + k / HIGH_PASS_Q + k * k
  return { b0: 1, b1: -2, b2: 1, a1: (2 * (k * k - 1)) / a0, a2: (1 - k / HIGH_PASS_Q + k * k) / a0 }
}
