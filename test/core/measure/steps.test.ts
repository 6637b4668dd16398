import fc from 'fast-check'
import { afterEach, describe, expect, it, vi } from 'vitest'
import {
  clippedRangeSteps,
  clippedRanges,
  hasSibilantBand,
  integratedLoudness,
  integratedLoudnessSteps,
  levelSteps,
  levels,
  longTermSpectrum,
  longTermSpectrumSteps,
  loudness,
  loudnessOverTime,
  loudnessOverTimeSteps,
  loudnessSteps,
  measure,
  measureSteps,
  noiseFloorDbfs,
  noiseFloorSteps,
  pausesOf,
  pausesSteps,
  peakPyramid,
  peakPyramidSteps,
  pitchSteps,
  pitchTrack,
  sibilanceDb,
  sibilanceSteps,
  sibilantEventSteps,
  sibilantEvents,
  spectrogram,
  spectrogramSteps,
  subBlockEnergies,
  subBlockEnergySteps,
} from '../../../src/core/measure'
import { frameCount, type Sound } from '../../../src/core/sound/sound'
import type { Steps } from '../../../src/core/sound/steps'
import { recordings } from '../../setup/recordings'
import { noise } from '../../setup/signals'

/** Whatever is told of the sibilants, it is measured there. */
const SIBILANTS = [{ startSeconds: 0.5, endSeconds: 0.8, levelDb: null }]

/** Columns of a tenth of a second, as many as a sound has. */
function columnsOf(sound: Sound) {
  const hopFrames = Math.round(sound.sampleRate / 10)
  return { fromFrame: 0, hopFrames, count: Math.ceil(frameCount(sound) / hopFrames) }
}

/** Each measure in one go and in steps. */
const measures: Record<string, [(sound: Sound) => unknown, (sound: Sound) => Steps<unknown>]> = {
  measure: [measure, measureSteps],
  subBlockEnergies: [subBlockEnergies, subBlockEnergySteps],
  loudness: [loudness, loudnessSteps],
  integratedLoudness: [integratedLoudness, integratedLoudnessSteps],
  loudnessOverTime: [loudnessOverTime, loudnessOverTimeSteps],
  levels: [levels, levelSteps],
  pausesOf: [pausesOf, pausesSteps],
  noiseFloorDbfs: [noiseFloorDbfs, (sound) => noiseFloorSteps(sound, pausesOf(sound))],
  peakPyramid: [peakPyramid, peakPyramidSteps],
  longTermSpectrum: [longTermSpectrum, longTermSpectrumSteps],
  sibilantEvents: [sibilantEvents, sibilantEventSteps],
  sibilanceDb: [(sound) => sibilanceDb(sound, SIBILANTS), (sound) => sibilanceSteps(sound, SIBILANTS)],
  pitchTrack: [pitchTrack, pitchSteps],
  clippedRanges: [clippedRanges, clippedRangeSteps],
  spectrogram: [
    (sound) => spectrogram(sound, columnsOf(sound)),
    (sound) => spectrogramSteps(sound, columnsOf(sound)),
  ],
}

/** A voice, or noise that comes and goes. */
const takes = fc.oneof(fc.constantFrom(...recordings().map(({ sound }) => sound)), noises())

function noises() {
  return fc
    .record({
      sampleRate: fc.constantFrom(11_025, 44_100, 48_000),
      seconds: fc.double({ min: 0, max: 3.6, noNaN: true }),
      channels: fc.integer({ min: 1, max: 2 }),
      seed: fc.nat(),
    })
    .map(({ sampleRate, seconds, channels, seed }) =>
      noise(sampleRate, seconds, channels, seed, (t) => 2 * Math.sin(4 * t + (seed % 7)) ** 8),
    )
    .filter(hasSibilantBand)
}

function taken<Result>(steps: Steps<Result>): { result: Result; shares: number[] } {
  const shares: number[] = []
  for (;;) {
    const step = steps.next()
    if (step.done) return { result: step.value, shares }
    shares.push(step.value)
  }
}

describe.each(Object.entries(measures))('%s in steps', (name, [plain, stepped]) => {
  it('comes to the same, tells what part is done, and can be left anywhere with the sound untouched', () => {
    fc.assert(
      fc.property(takes, fc.double({ min: 0, max: 1, noNaN: true }), (sound, part) => {
        const before = sound.channels.map((samples) => samples.slice())
        const { result, shares } = taken(stepped(sound))
        expect(result).toEqual(plain(sound))
        expect(shares.every((share) => share >= 0 && share <= 1)).toBe(true)
        expect(shares).toEqual(shares.toSorted((a, b) => a - b))
        const left = stepped(sound)
        for (let step = 0; step < part * shares.length; step++) left.next()
        left.return(result)
        expect(taken(stepped(sound)).result).toEqual(result)
        expect(sound.channels).toEqual(before)
      }),
      { numRuns: 8 },
    )
  })

  it('takes at least a step for every second of a channel', () => {
    const sound = noise(48_000, 10, 2, 1, (t) => Math.sin(t) ** 8)
    // Some look only at part of the sound, or at what others have made of it.
    const seconds = { noiseFloorDbfs: 1, sibilantEvents: 10, sibilanceDb: 10, pitchTrack: 10 }[name] ?? 20
    expect(taken(stepped(sound)).shares.length).toBeGreaterThanOrEqual(seconds)
  })
})

describe('measures of a long take', () => {
  afterEach(() => {
    vi.unstubAllGlobals()
  })

  const sound = noise(48_000, 20, 2, 1, (t) => Math.sin(t) ** 8)

  it.each(Object.entries(measures))('%s makes no array near as long as the take', (_, [plain]) => {
    let longest = 0
    const watched = <Kind extends Float32ArrayConstructor | Float64ArrayConstructor>(kind: Kind): Kind =>
      new Proxy(kind, {
        construct(target, [first, ...rest], newTarget) {
          if (typeof first === 'number') longest = Math.max(longest, first * target.BYTES_PER_ELEMENT)
          return Reflect.construct(target, [first, ...rest], newTarget)
        },
      })
    vi.stubGlobal('Float32Array', watched(Float32Array))
    vi.stubGlobal('Float64Array', watched(Float64Array))
    plain(sound)
    const bytes = frameCount(sound) * sound.channels.length * 4
    expect(longest / bytes).toBeLessThan(0.1)
  })
})
