import { seededRandom } from '../core/dsp/random'
import { controlTracks } from './controls'
import { frication } from './frication'
import { glottalSource } from './glottal-source'
import type { Segment } from './layout'
import { evenOutVowels, levelPhrases } from './levels'
import type { Place } from './phonemes'
import { pitchTrack } from './pitch-track'
import type { Phrase } from './score'
import { atSampleRate, fillTrack, newTrack, sampleRate, smoothed } from './track'
import { shapeByTract } from './vocal-tract'

/** The clean voice in two layers that are to be added; linear samples, RMS of each phrase's vowels = 1. */
export interface CleanVoice {
  /** Everything but the sibilants. */
  readonly body: Float64Array
  /** s, sh and the hiss of z, kept apart so that they can be made too sharp. */
  readonly sibilance: Float64Array
}

const places: readonly Place[] = ['alveolar', 'palatal', 'labial']

/**
 * Sings the laid-out phrases with no fault: a formant synthesiser after D. H. Klatt, "Software for a
 * cascade/parallel formant synthesizer", JASA 67(3), 1980. The same seed gives the same samples.
 */
export function singCleanly(
  segments: readonly Segment[],
  phrases: readonly Phrase[],
  seconds: number,
  seed: number,
): CleanVoice {
  const frames = Math.round(seconds * sampleRate)
  const controls = controlTracks(segments, seconds)
  const pitchHz = pitchTrack(segments, seconds, seededRandom(seed))
  const effort = effortTrack(segments, phrases, seconds)
  const body = glottalSource({ ...controls, pitchHz, effort }, frames, seed + 1)
  shapeByTract(body, { ...controls, pitchHz })
  evenOutVowels(body, segments)
  levelPhrases(body, segments, [])
  const sibilance = new Float64Array(frames)
  places.forEach((place, index) => {
    const hiss = frication(place, frames, seed + 2 + index)
    addShaped(sibilance, hiss, controls.sibilance[place])
    addShaped(body, hiss, controls.otherNoise[place])
  })
  return { body, sibilance }
}

function effortTrack(
  segments: readonly Segment[],
  phrases: readonly Phrase[],
  seconds: number,
): Float64Array {
  const track = newTrack(seconds)
  for (const { startSeconds, endSeconds, phrase } of segments) {
    fillTrack(track, startSeconds, endSeconds, phrases[phrase]?.effort ?? 0)
  }
  return smoothed(track, 0.1)
}

function addShaped(target: Float64Array, noise: Float64Array, gain: Float64Array): void {
  const gains = atSampleRate(gain, target.length)
  for (let i = 0; i < target.length; i += 1) {
    target[i] = (target[i] ?? 0) + (noise[i] ?? 0) * (gains[i] ?? 0)
  }
}
