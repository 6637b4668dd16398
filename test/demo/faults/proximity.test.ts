import { describe, expect, it } from 'vitest'
import { halfAngleSine, magnitudeSquared } from '../../../src/core/dsp/filters/biquad'
import { proximityRiseDb, proximityShelf } from '../../../src/demo/faults/proximity'

const speedOfSound = 343

/**
 * A cardioid's output in a spherical wave exp(-j k r) / r against that in a plane wave of the same pressure,
 * dB: half the pressure plus half the pressure gradient, the gradient taken by differences.
 */
function cardioidRiseDb(distanceMetres: number, frequencyHz: number): number {
  const k = (2 * Math.PI * frequencyHz) / speedOfSound
  const step = 1e-6
  const wave = (r: number) => ({ real: Math.cos(k * r) / r, imaginary: -Math.sin(k * r) / r })
  const near = wave(distanceMetres - step)
  const far = wave(distanceMetres + step)
  const gradient = {
    real: (near.real - far.real) / (2 * step),
    imaginary: (near.imaginary - far.imaginary) / (2 * step),
  }
  // Divided by j k, the gradient of a plane wave is its pressure.
  const here = wave(distanceMetres)
  const real = (here.real + gradient.imaginary / k) / 2
  const imaginary = (here.imaginary - gradient.real / k) / 2
  return 20 * Math.log10(Math.hypot(real, imaginary) * distanceMetres)
}

describe('proximity effect', () => {
  it.each([0.05, 0.07, 0.1, 0.3])('follows the field of a point source at %f m', (distance) => {
    for (const frequencyHz of [50, 100, 200, 500, 1000]) {
      expect(proximityRiseDb(distance, frequencyHz)).toBeCloseTo(cardioidRiseDb(distance, frequencyHz), 3)
    }
  })

  it.each([0.05, 0.07, 0.1])('is a shelf within 0.5 dB of it from 75 Hz up at %f m', (distance) => {
    const shelf = proximityShelf(distance, 48_000)
    for (let frequencyHz = 75; frequencyHz < 20_000; frequencyHz *= 1.1) {
      const gainDb = 10 * Math.log10(magnitudeSquared(shelf, halfAngleSine(frequencyHz, 48_000)))
      expect(Math.abs(gainDb - cardioidRiseDb(distance, frequencyHz)), `${frequencyHz} Hz`).toBeLessThan(0.5)
    }
  })
})
