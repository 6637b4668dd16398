import { dbToGain } from '../../core'
import type { Segment } from './layout'
import { atSampleRate, fillTrack, newTrack, sampleRate, smoothed } from './track'

/** Half-way to all vowels being equally loud: a singer evens out what the mouth makes uneven. */
const evenness = 0.5
const changeSeconds = 0.03

/** The frame nearest to a time. */
export function toFrame(seconds: number): number {
  return Math.round(seconds * sampleRate)
}

/** Brings the vowels nearer to each other in level, in place; consonants go with the vowel before them. */
export function evenOutVowels(samples: Float64Array, segments: readonly Segment[]): void {
  let gain = 1
  const gains = segments.map((segment) => {
    if (segment.frequencyHz !== undefined) gain = 1 / vowelRms(samples, [segment]) ** evenness
    return gain
  })
  multiply(
    samples,
    gainAlong(segments, (_, index) => gains[index] ?? 1, samples.length),
  )
}

/**
 * Brings each phrase, in place, to the level at which the RMS of its vowels is `levelsDb[phrase]` (dB of 1; 0
 * where there is none), and returns the level asked for along the take, linear.
 */
export function levelPhrases(
  samples: Float64Array | Float32Array,
  segments: readonly Segment[],
  levelsDb: readonly number[],
): Float32Array {
  const wanted = (phrase: number) => dbToGain(levelsDb[phrase] ?? 0)
  const found = new Map<number, number>()
  for (const { phrase } of segments) {
    if (!found.has(phrase))
      found.set(
        phrase,
        vowelRms(
          samples,
          segments.filter((other) => other.phrase === phrase),
        ),
      )
  }
  const gain = ({ phrase }: Segment) => wanted(phrase) / (found.get(phrase) ?? 1)
  multiply(samples, gainAlong(segments, gain, samples.length))
  return gainAlong(segments, ({ phrase }) => wanted(phrase), samples.length)
}

/** Root of the mean square of `samples`; 0 when there are none. */
export function rms(samples: Float32Array | Float64Array): number {
  let power = 0
  for (let i = 0; i < samples.length; i += 1) power += (samples[i] ?? 0) ** 2
  return Math.sqrt(power / Math.max(1, samples.length))
}

/** RMS of the vowels among `segments`; 1 where there is none to go by. */
export function vowelRms(samples: Float64Array | Float32Array, segments: readonly Segment[]): number {
  let power = 0
  let count = 0
  for (const { startSeconds, endSeconds, frequencyHz } of segments) {
    if (frequencyHz === undefined) continue
    const end = toFrame(endSeconds)
    for (let i = toFrame(startSeconds); i < end; i += 1) power += (samples[i] ?? 0) ** 2
    count += end - toFrame(startSeconds)
  }
  return power > 0 ? Math.sqrt(power / count) : 1
}

function gainAlong(
  segments: readonly Segment[],
  gain: (segment: Segment, index: number) => number,
  frames: number,
): Float32Array {
  const track = newTrack(frames / sampleRate)
  segments.forEach((segment, index) => {
    fillTrack(track, segment.startSeconds, segment.endSeconds, gain(segment, index))
  })
  return atSampleRate(smoothed(track, changeSeconds), frames)
}

function multiply(samples: Float64Array | Float32Array, gains: Float32Array): void {
  for (let i = 0; i < samples.length; i += 1) samples[i] = (samples[i] ?? 0) * (gains[i] ?? 0)
}
