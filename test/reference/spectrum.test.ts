import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { FourierTransform } from '../../src/core/dsp/numeric/fft'
import { longTermSpectrum, measure } from '../../src/core/measure'
import { inChannels, joined, mulberry32, noise, steppedSine } from '../setup/signals'

describe('the discrete Fourier transform by its definition', () => {
  const size = 64
  const random = mulberry32(5)
  const draw = () => Float64Array.from({ length: size }, () => random() - 0.5)

  it('powers are |sum of x[n] e^(-2 pi i k n / N)|^2', () => {
    const samples = draw()
    const powers = new FourierTransform(size).powers(samples)
    powers.forEach((power, k) => {
      let [re, im] = [0, 0]
      samples.forEach((x, n) => {
        re += x * Math.cos((2 * Math.PI * k * n) / size)
        im -= x * Math.sin((2 * Math.PI * k * n) / size)
      })
      expect(power).toBeCloseTo(re * re + im * im, 10)
    })
  })

  it('a cross-correlation is the sum of a[n] b[n + m]', () => {
    const [a, b] = [draw(), draw()]
    const correlation = new FourierTransform(size).crossCorrelation(a, b)
    for (let m = 0; m < size; m++) {
      const direct = a.reduce((sum, x, n) => sum + x * (b[(n + m) % size] ?? 0), 0)
      expect(correlation[2 * m]).toBeCloseTo(direct, 10)
    }
  })

  it('refuses sizes that are not powers of two', () => {
    for (const wrong of [0, 1, 2, 3, 100, 4.5, Number.NaN]) {
      expect(() => new FourierTransform(wrong)).toThrow(RangeError)
    }
  })
})

describe('longTermSpectrum against signals of known power', () => {
  it('a full-scale sine has -3.01 dBFS (A^2 / 2) in the band around it, at any rate and in any band', () => {
    for (const sampleRate of [44_100, 48_000, 96_000]) {
      for (const bandsPerOctave of [3, 6, 12]) {
        const sound = inChannels(sampleRate, steppedSine(sampleRate, [[3, 0]], 1000), 2)
        const { frequenciesHz, levelDb } = longTermSpectrum(sound, { bandsPerOctave, lowestHz: 62.5 })
        expect(frequenciesHz[96]).toBeCloseTo(1000, 6)
        expect(levelDb[96]).toBeCloseTo(-3.0103, 2)
        // One octave away only the window's side lobes are left.
        expect(levelDb[72]).toBeLessThan(-100)
        expect(levelDb[120]).toBeLessThan(-100)
      }
    }
  })

  it('white noise has the share of its power that the band has of the spectrum', () => {
    // Uniform in +-0.5: mean square 1 / 12. Averages of 20 s scatter by less than 0.5 dB in these bands.
    const sampleRate = 48_000
    const { frequenciesHz, levelDb } = longTermSpectrum(
      noise(sampleRate, 20, 1, 11, () => 0.5),
      { bandsPerOctave: 3, pointsPerOctave: 3, lowestHz: 100 },
    )
    frequenciesHz.forEach((hz, i) => {
      const width = hz * (2 ** (1 / 6) - 2 ** (-1 / 6))
      const expected = 10 * Math.log10(((1 / 12) * width) / (sampleRate / 2))
      expect(Math.abs((levelDb[i] ?? Number.NaN) - expected), `${hz} Hz`).toBeLessThan(0.5)
    })
  })

  it('bands side by side add up to the root mean square of the whole', () => {
    const sampleRate = 48_000
    const sound = noise(sampleRate, 20, 1, 3, () => 0.1)
    // A one-pole filter takes the top off, so that nothing of weight lies above the highest band.
    let state = 0
    const smooth = sound.channels[0]?.map((x) => {
      state += 0.05 * (x - state)
      return state
    })
    sound.channels[0]?.set(smooth ?? [])
    const bands = longTermSpectrum(sound, {
      bandsPerOctave: 3,
      pointsPerOctave: 3,
      lowestHz: 1.25,
      highestHz: 20_500,
    })
    const total = bands.levelDb.reduce((sum, db) => sum + 10 ** (db / 10), 0)
    expect(10 * Math.log10(total)).toBeCloseTo(measure(sound).rmsDbfs ?? Number.NaN, 1)
  })

  it('a sound shorter than a segment is measured too', () => {
    const sound = inChannels(48_000, steppedSine(48_000, [[0.05, -20]]), 1)
    const { frequenciesHz, levelDb } = longTermSpectrum(sound, { bandsPerOctave: 1 })
    const peak = levelDb.indexOf(Math.max(...levelDb))
    expect(Math.abs(Math.log2((frequenciesHz[peak] ?? 0) / 1000))).toBeLessThan(0.5)
    expect(levelDb[peak]).toBeCloseTo(-23.01, 1)
  })

  it('averages over time: half silence is 3.01 dB less', () => {
    const sine = steppedSine(48_000, [[8, -6]], 1000)
    const whole = longTermSpectrum(inChannels(48_000, sine, 1), { lowestHz: 1000 })
    const half = longTermSpectrum(inChannels(48_000, joined([sine, new Float32Array(sine.length)]), 1), {
      lowestHz: 1000,
    })
    expect((whole.levelDb[0] ?? 0) - (half.levelDb[0] ?? 0)).toBeCloseTo(3.01, 1)
  })
})

describe('longTermSpectrum at its limits', () => {
  it('nothing to measure is NaN, never -Infinity', () => {
    for (const frames of [0, 1, 100, 48_000]) {
      const { levelDb } = longTermSpectrum(inChannels(48_000, new Float32Array(frames), 1))
      expect(levelDb.length).toBeGreaterThan(100)
      expect(levelDb.every(Number.isNaN)).toBe(true)
    }
  })

  it('points stay inside the asked range and every band below half the sample rate', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(8000, 22_050, 44_100, 192_000),
        fc.integer({ min: 1, max: 48 }),
        fc.integer({ min: 1, max: 96 }),
        (sampleRate, bandsPerOctave, pointsPerOctave) => {
          const { frequenciesHz, levelDb } = longTermSpectrum(
            noise(sampleRate, 0.4, 1, 1, () => 0.5),
            { bandsPerOctave, pointsPerOctave },
          )
          const last = frequenciesHz.at(-1) ?? Number.NaN
          expect(frequenciesHz[0]).toBe(20)
          expect(last * 2 ** (0.5 / bandsPerOctave)).toBeLessThanOrEqual(sampleRate / 2 + 1e-6)
          expect(last).toBeLessThanOrEqual(20_000 + 1e-6)
          expect(levelDb).toHaveLength(frequenciesHz.length)
          expect(levelDb.some(Number.isNaN)).toBe(false)
        },
      ),
      { numRuns: 30 },
    )
  })

  it('refuses options out of range', () => {
    const sound = inChannels(48_000, new Float32Array(100), 1)
    const code = expect.objectContaining({ code: 'option' })
    for (const options of [
      { bandsPerOctave: 0 },
      { bandsPerOctave: Number.NaN },
      { pointsPerOctave: 1000 },
      { lowestHz: 0 },
      { lowestHz: 1000, highestHz: 500 },
    ]) {
      expect(() => longTermSpectrum(sound, options)).toThrow(code)
    }
  })
})
