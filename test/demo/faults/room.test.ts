import { describe, expect, it } from 'vitest'
import { whiteNoise } from '../../../src/core/dsp/numeric/random'
import { addRoom } from '../../../src/demo/faults/room'
import { rmsOf } from '../analysis'

const rate = 48_000

describe('addRoom', () => {
  it.each([0.2, 0.35, 0.8])('falls by 60 dB in the %f s asked for', (seconds) => {
    const impulse = new Float32Array(2 * rate)
    impulse[0] = 1
    addRoom(impulse, rate, seconds, 0)
    // The decay curve by backward integration: M. R. Schroeder, "New Method of Measuring Reverberation Time",
    // JASA 37(3), 1965; read between -5 and -35 dB as ISO 3382 reads T30.
    const remaining = new Float64Array(impulse.length)
    for (let i = impulse.length - 2; i > 0; i -= 1)
      remaining[i] = (remaining[i + 1] ?? 0) + (impulse[i] ?? 0) ** 2
    const start = remaining[1] ?? 0
    const when = (db: number) =>
      remaining.findIndex((energy, i) => i > 0 && energy < start * 10 ** (db / 10)) / rate
    expect(Math.abs((2 * (when(-35) - when(-5))) / seconds - 1)).toBeLessThan(0.1)
  })

  it('adds the room at the level asked for and leaves the voice as it was', () => {
    const dry = new Float32Array(whiteNoise(2 * rate, 4))
    const samples = dry.slice()
    addRoom(samples, rate, 0.3, -20)
    const added = samples.map((sample, i) => sample - (dry[i] ?? 0))
    expect(20 * Math.log10(rmsOf(added, 0, added.length) / rmsOf(dry, 0, dry.length))).toBeCloseTo(-20, 2)
    // Nothing comes back before sound could have crossed a small room and returned.
    expect(rmsOf(added, 0, 1000)).toBe(0)
  })

  it('leaves silence silent', () => {
    const silence = new Float32Array(rate)
    addRoom(silence, rate, 0.3, -20)
    expect(silence.every((sample) => sample === 0)).toBe(true)
  })
})
