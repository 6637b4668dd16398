import { runInPlace } from '../chain/run-in-place'
import { RUN_FRAMES } from '../chain/run-stage'
import { dbToGain, gainToDb } from '../sound/decibels'
import { finished, partOf, type Steps } from '../sound/steps'
import type { StageDoc } from '../stages'
import { createProcessor } from '../stages/processors'

/** What a stage adds to a sine. */
export interface AddedHarmonics {
  readonly frequencyHz: number
  /** Peak level of the sine that went in, dBFS. */
  readonly inputDbfs: number
  /** Levels of the harmonics from the second on, dB relative to the first, -120 or more. */
  readonly levelsDb: readonly number[]
}

/** Harmonics that are measured, the first included. */
const HARMONICS = 9
/** Near the middle of sung pitches; harmonics then stay below half of any sample rate. Chosen, no source. */
const NEAR_HZ = 220
/** Time until filters that take out direct current have settled, seconds. */
const SETTLING_SECONDS = 0.6
/** Frames over which levels are taken: the sine has a whole number of periods in them. */
const WINDOW_FRAMES = 8192
/** Rounding to 32 bits lies below it, dB. */
const LOWEST_DB = -120

/** Loudness of a 997 Hz sine of 0 dBFS peak in one channel, LUFS: ITU-R BS.1770-5, annex 1. */
const FULL_SCALE_SINE_LUFS = -3.01

/** Peak level, dBFS, of a sine near 1 kHz that is as loud as `lufs` when it is in all of 1 or 2 channels alike. */
export function sineAsLoudDbfs(lufs: number, channelCount: number): number {
  return lufs - FULL_SCALE_SINE_LUFS - 10 * Math.log10(channelCount)
}

/**
 * What `stage`, as if it were on, adds to a sine: its own processor runs over one, and the levels at the sine's multiples
 * are taken by the discrete Fourier transform once it has settled.
 * @param inputDbfs peak level of the sine, dBFS
 * @param sampleRate Hz
 */
export function addedHarmonics(stage: StageDoc, inputDbfs: number, sampleRate: number): AddedHarmonics {
  return finished(addedHarmonicSteps(stage, inputDbfs, sampleRate))
}

/** {@link addedHarmonics} in steps. */
export function* addedHarmonicSteps(
  stage: StageDoc,
  inputDbfs: number,
  sampleRate: number,
): Steps<AddedHarmonics> {
  const periods = Math.max(1, Math.round((NEAR_HZ * WINDOW_FRAMES) / sampleRate))
  const processor = createProcessor(stage, { sampleRate, channelCount: 1, staticSettings: true })
  const start = Math.ceil(SETTLING_SECONDS * sampleRate) + processor.latencyFrames
  const turn = (2 * Math.PI * periods) / WINDOW_FRAMES
  const peak = dbToGain(inputDbfs)
  const samples = Float32Array.from({ length: start + WINDOW_FRAMES }, (_, n) => peak * Math.sin(turn * n))
  yield* partOf(runInPlace(processor, [samples], RUN_FRAMES), 0, 0.9)
  const settled = samples.subarray(start)
  const amplitudes: number[] = []
  for (let k = 1; k <= HARMONICS; k++) {
    amplitudes.push(amplitudeAt(settled, k * turn))
    yield 0.9 + (0.1 * k) / HARMONICS
  }
  const [first = 0, ...others] = amplitudes
  return {
    frequencyHz: (periods * sampleRate) / WINDOW_FRAMES,
    inputDbfs,
    levelsDb: others.map((amplitude) =>
      first > 0 ? Math.max(LOWEST_DB, gainToDb(amplitude / first)) : LOWEST_DB,
    ),
  }
}

/** Amplitude of the sine that turns by `turn` radians a frame. */
function amplitudeAt(samples: Float32Array, turn: number): number {
  let re = 0
  let im = 0
  for (let n = 0; n < samples.length; n++) {
    const sample = samples[n] ?? 0
    re += sample * Math.cos(turn * n)
    im += sample * Math.sin(turn * n)
  }
  return (2 * Math.hypot(re, im)) / samples.length
}
