import type { Biquad } from '../../core/primitives'

/** Speed of sound in air at 20 degrees, m/s. */
const speedOfSound = 343
/** Below this the rise stops, as a microphone's own high-pass makes it do. */
const floorHz = 25

/**
 * The rise of the bass that a cardioid microphone gives a voice `distanceMetres` away. In a spherical wave the
 * pressure gradient is 1 + 1 / (j k r) times that of a plane wave, and a cardioid is half pressure and half
 * gradient: 1 + 1 / (2 j k r), a first-order shelf from c / (4 pi r) down. Bilinear transform, exact at the
 * upper corner; within 0.5 dB of the formula from 75 Hz up.
 */
export function proximityShelf(distanceMetres: number, sampleRate: number): Biquad {
  const zero = Math.tan((Math.PI * proximityCornerHz(distanceMetres)) / sampleRate)
  const pole = Math.tan((Math.PI * floorHz) / sampleRate)
  const a0 = 1 + pole
  return { b0: (1 + zero) / a0, b1: (zero - 1) / a0, b2: 0, a1: (pole - 1) / a0, a2: 0 }
}

/** Gain of the unlimited formula at `frequencyHz`, dB: what the label of the fault states. */
export function proximityRiseDb(distanceMetres: number, frequencyHz: number): number {
  const ratio = proximityCornerHz(distanceMetres) / frequencyHz
  return 10 * Math.log10(1 + ratio * ratio)
}

/** Where the rise is 3 dB. The rise is (f - j corner) / f, so that a high-pass of 6 dB per octave there takes it back. */
export function proximityCornerHz(distanceMetres: number): number {
  return speedOfSound / (4 * Math.PI * distanceMetres)
}
