import { describe, expect, it } from 'vitest'
import type { Sound } from '../../src/core'
import { channel, monoOf, stageWith, through } from '../setup/chains'
import { sineAmplitude } from '../setup/spectrum'

const RATE = 44_100

/** 5 kHz at -6 dBFS. */
const sine = monoOf(RATE, 2 * RATE, (n) => 10 ** (-6 / 20) * Math.sin((2 * Math.PI * 5000 * n) / RATE))

/** The loudest of what folds back from harmonics 5 to 200 of 5 kHz, in dB re the fundamental. */
function worstAliasDb(sound: Sound): number {
  const samples = channel(sound)
  // Half a second from the first on: whole periods of every multiple of 100 Hz, of which each alias is one.
  const amplitude = (frequencyHz: number) => sineAmplitude(samples, frequencyHz, RATE, RATE, 1.5 * RATE)
  let worst = 0
  for (let harmonic = 5; harmonic <= 200; harmonic++) {
    const folded = Math.abs(((5000 * harmonic + RATE / 2) % RATE) - RATE / 2)
    if (folded % 5000 !== 0) worst = Math.max(worst, amplitude(folded))
  }
  return 20 * Math.log10(worst / amplitude(5000))
}

// The tanh of a 4.999 kHz sine folds back at -17.8 dB in all without oversampling: J. D. Parker, V. Zavalishin,
// E. Le Bivic, "Reducing the Aliasing of Nonlinear Waveshaping Using Continuous-Time Convolution", DAFx-16, on why.
describe('aliases of a 5 kHz sine at -6 dBFS at 44.1 kHz', () => {
  it.each([
    [0, 0],
    [6, 0],
    [6, 1],
    [12, -1],
    [18, 0],
    [24, 0],
    [24, 1],
  ])('saturated with drive %d dB and bias %d lie below -80 dB re the fundamental', (driveDb, bias) => {
    expect(worstAliasDb(through(sine, stageWith('saturator', { driveDb, bias })))).toBeLessThan(-80)
  })

  it('lie above -40 dB where the same curve is run at the plain rate', () => {
    const plain = { ...sine, channels: sine.channels.map((samples) => samples.map((x) => Math.tanh(4 * x))) }
    expect(worstAliasDb(plain)).toBeGreaterThan(-40)
  })
})
