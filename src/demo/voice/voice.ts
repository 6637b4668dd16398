import { seededRandom } from '../../core/primitives'
import type { Segment } from '../song/layout'
import { evenOutVowels, levelPhrases } from '../song/levels'
import type { Phrase } from '../song/score'
import { fillTrack, newTrack, sampleRate, smoothed } from '../song/track'
import { consonantNoise } from './consonant-noise'
import { controlTracks } from './controls'
import { formantTracks } from './formant-tracks'
import { glottalSource } from './glottal-source'
import { pitchTrack } from './pitch-track'
import { vibratoTracks } from './vibrato'
import { addSideBranches, shapeByTract } from './vocal-tract'

/** The clean voice in two layers that are to be added; linear samples, RMS of each phrase's vowels = 1. */
export interface CleanVoice {
  /** Everything but the sibilants. */
  readonly body: Float64Array
  /** s, sh and the hiss of z, kept apart so that they can be made too sharp. */
  readonly sibilance: Float64Array
}

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
  const random = seededRandom(seed)
  const vibrato = vibratoTracks(segments, seconds, random)
  const controls = controlTracks(segments, seconds, vibrato.gain)
  const pitchHz = pitchTrack(segments, seconds, vibrato.cents)
  const formantsHz = formantTracks(segments, seconds, random)
  const effort = effortTrack(segments, phrases, seconds)
  const body = glottalSource({ ...controls, pitchHz, effort }, frames, seed + 1)
  addSideBranches(body)
  shapeByTract(body, { ...controls, formantsHz, pitchHz })
  evenOutVowels(body, segments)
  levelPhrases(body, segments, [])
  const { sibilance, other } = consonantNoise(segments, frames, seed + 2)
  for (let i = 0; i < frames; i += 1) body[i] = (body[i] ?? 0) + (other[i] ?? 0)
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
