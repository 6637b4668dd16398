import { ebur128_integrated_mono, ebur128_integrated_stereo } from 'ebur128-wasm'
import { describe, expect, it } from 'vitest'
import { integratedLoudness, loudnessOverTime, measure } from '../../src/core/measure'
import type { Sound } from '../../src/core/sound/sound'
import { gatedLufs, within } from '../core/measure/loudness-oracle'
import { recordings } from '../setup/recordings'
import {
  inChannels,
  mulberry32,
  noise,
  repeated,
  type Stretch,
  steppedSine,
  stereoTone,
} from '../setup/signals'

/** EBU Tech 3341 (November 2023), Table 1: every case allows +-0.1 LU. */
const TOLERANCE_LU = 0.1
const RATES = [44_100, 48_000, 96_000]

const tone = (...stretches: Stretch[]) => stretches
const repeat = (times: number, ...stretches: Stretch[]) => Array(times).fill(stretches).flat() as Stretch[]
const twenty = Array.from({ length: 20 }, (_, i) => i)

describe('ITU-R BS.1770-5, Annex 1', () => {
  it('997 Hz at 0 dB FS in the left channel reads -3.01 LKFS', () => {
    for (const sampleRate of [8000, 11_025, 22_050, 32_000, ...RATES, 192_000]) {
      const sound = inChannels(sampleRate, steppedSine(sampleRate, [[10, 0]], 997), 1)
      within(integratedLoudness(sound), -3.01, 0.005)
    }
  })

  it('weighs surround channels by 1.41 (Table 3)', () => {
    const sine = steppedSine(48_000, [[5, -20]], 997)
    const none = new Float32Array(sine.length)
    const one = (place: number): Sound => ({
      sampleRate: 48_000,
      channels: Array.from({ length: 5 }, (_, i) => (i === place ? sine : none)),
    })
    for (const front of [0, 1, 2]) within(integratedLoudness(one(front)), -23.01, 0.005)
    for (const surround of [3, 4]) {
      within(integratedLoudness(one(surround)), -23.01 + 10 * Math.log10(1.41), 0.005)
    }
  })
})

describe('EBU Tech 3341 (November 2023), Table 1', () => {
  const steady: [number, number][] = [
    [1, -23],
    [2, -33],
  ]
  it.each(steady)('case %i: M, S and I are %d LUFS', (_, level) => {
    for (const sampleRate of RATES) {
      const measures = measure(stereoTone(sampleRate, [[20, level]]))
      within(measures.integratedLufs, level, TOLERANCE_LU)
      within(measures.momentaryMaxLufs, level, TOLERANCE_LU)
      within(measures.shortTermMaxLufs, level, TOLERANCE_LU)
    }
  })

  const gated: [number, Stretch[]][] = [
    [3, tone([10, -36], [60, -23], [10, -36])],
    [4, tone([10, -72], [10, -36], [60, -23], [10, -36], [10, -72])],
    [5, tone([20, -26], [20.1, -20], [20, -26])],
  ]
  it.each(gated)('case %i: I is -23.0 LUFS', (_, stretches) => {
    for (const sampleRate of RATES) {
      const integrated = integratedLoudness(stereoTone(sampleRate, stretches))
      within(integrated, -23, TOLERANCE_LU)
      within(integrated, gatedLufs(stretches), 0.01)
    }
  })

  it('case 6: five channels, I is -23.0 LUFS', () => {
    for (const sampleRate of RATES) {
      const at = (level: number) => steppedSine(sampleRate, [[20, level]])
      const channels = [at(-28), at(-28), at(-24), at(-30), at(-30)]
      within(integratedLoudness({ sampleRate, channels }), -23, TOLERANCE_LU)
    }
  })

  it('case 9: S is -23.0 LUFS, constant after 3 s', () => {
    const { shortTermLufs } = loudnessOverTime(stereoTone(48_000, repeat(5, [1.34, -20], [1.66, -30])), 0.01)
    expect(shortTermLufs.subarray(300)).toHaveLength(1201)
    for (const value of shortTermLufs.subarray(300)) within(value, -23, TOLERANCE_LU)
  })

  it('case 12: M is -23.0 LUFS, constant after 1 s', () => {
    const { momentaryLufs } = loudnessOverTime(stereoTone(48_000, repeat(25, [0.18, -20], [0.22, -30])), 0.01)
    expect(momentaryLufs.subarray(100)).toHaveLength(901)
    for (const value of momentaryLufs.subarray(100)) within(value, -23, TOLERANCE_LU)
  })

  it.each(twenty)('case 10, file %i: max S is -23.0 LUFS', (i) => {
    const sound = stereoTone(48_000, [
      [i * 0.15, null],
      [3, -23],
      [1, null],
    ])
    within(measure(sound).shortTermMaxLufs, -23, TOLERANCE_LU)
  })

  it.each(twenty)('case 13, file %i: max M is -23.0 LUFS', (i) => {
    const sound = stereoTone(44_100, [
      [i * 0.02, null],
      [0.4, -23],
      [1, null],
    ])
    within(measure(sound).momentaryMaxLufs, -23, TOLERANCE_LU)
  })

  it('case 11: max S climbs from -38 to -19 LUFS', () => {
    const stretches = twenty.flatMap((i) => tone([i * 0.15, null], [3, i - 38], [3 - i * 0.15, null]))
    const { shortTermLufs } = loudnessOverTime(stereoTone(48_000, stretches), 0.01)
    for (const i of twenty) within(largestUntil(shortTermLufs, (i + 1) * 600), i - 38, TOLERANCE_LU)
  })

  it('case 14: max M climbs from -38 to -19 LUFS', () => {
    const stretches = twenty.flatMap((i) => tone([i * 0.02, null], [0.4, i - 38], [0.4 - i * 0.02, null]))
    const { momentaryLufs } = loudnessOverTime(stereoTone(48_000, stretches), 0.01)
    for (const i of twenty) within(largestUntil(momentaryLufs, (i + 1) * 80), i - 38, TOLERANCE_LU)
  })

  it('the alignment tone, stereo 1 kHz at -18 dBFS, reads -18.0 LUFS', () => {
    within(integratedLoudness(stereoTone(48_000, [[20, -18]])), -18, TOLERANCE_LU)
  })
})

describe('both gates of BS.1770-5, equations 3 to 7, where the cases of Tech 3341 see only one', () => {
  const exact = 0.01

  it.each([null, -75])(
    'the absolute gate keeps out a pause at %j dBFS before the relative one is set',
    (pause) => {
      const stretches = tone([5, -23], [5, -37], [60, pause])
      expect(gatedLufs(stretches, { absolute: false })).toBeLessThan(gatedLufs(stretches) - 2)
      within(integratedLoudness(stereoTone(48_000, stretches)), gatedLufs(stretches), exact)
    },
  )

  it('the absolute gate lies at -70 LUFS', () => {
    const stretches = tone([20, -69.5], [20, -70.5])
    expect(gatedLufs(stretches, { absolute: false })).toBeLessThan(gatedLufs(stretches) - 0.4)
    within(integratedLoudness(stereoTone(48_000, stretches)), gatedLufs(stretches), exact)
  })

  it('the relative gate lies 10 LU down, not 8', () => {
    const stretches = tone([20, -23], [20, -34.5])
    expect(gatedLufs(stretches, { relativeLu: 8 })).toBeGreaterThan(gatedLufs(stretches) + 2)
    within(integratedLoudness(stereoTone(48_000, stretches)), gatedLufs(stretches), exact)
  })
})

describe('libebur128, a general-purpose library', () => {
  it('the noise below comes from the generator its values were computed with', () => {
    const random = mulberry32(1)
    const first = [0.627073940588, 0.00273572118, 0.52744703996, 0.981050967472, 0.968377898214]
    for (const value of first) expect(random()).toBeCloseTo(value, 11)
  })

  const loud = () => 0.1
  const uneven = (seconds: number) => (seconds < 3 ? 0.1 : seconds < 6 ? 0.0002 : seconds < 8 ? 0.01 : 0.03)
  // Integrated loudness at 48 kHz as libebur128 1.2.6 gives it.
  const vectors: [string, number, number, (seconds: number) => number, number][] = [
    ['mono', 1, 1, loud, -21.6354],
    ['stereo', 2, 2, loud, -18.6243],
    ['mono with a pause', 1, 3, uneven, -23.7454],
  ]
  it.each(vectors)('agrees on noise: %s', (_, channelCount, seed, gain, at48k) => {
    within(integratedLoudness(noise(48_000, 10, channelCount, seed, gain)), at48k, 0.0002)
    // It does not hold the gain at 997 Hz from rate to rate: at 96 kHz it reads 0.017 LU lower.
    for (const sampleRate of [44_100, 88_200, 96_000]) {
      const sound = noise(sampleRate, 10, channelCount, seed, gain)
      within(integratedLoudness(sound), reference(sound), 0.02)
    }
  })

  it.each(recordings())('agrees on the recording $name, once and ten times over', ({ sound }) => {
    within(integratedLoudness(sound), reference(sound), TOLERANCE_LU)
    const long = repeated(sound, 10)
    within(integratedLoudness(long), reference(long), TOLERANCE_LU)
  })
})

function largestUntil(values: Float32Array, end: number): number {
  return Math.max(...values.subarray(0, end + 1).filter((value) => !Number.isNaN(value)))
}

function reference({ sampleRate, channels: [left, right] }: Sound): number {
  if (!left) throw new Error('no channel')
  return right
    ? ebur128_integrated_stereo(sampleRate, left, right)
    : ebur128_integrated_mono(sampleRate, left)
}
