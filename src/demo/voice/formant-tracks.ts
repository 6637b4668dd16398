import { between, type Random } from '../../core/primitives'
import type { Segment } from '../song/layout'
import { type Formants, phoneme, phonemes } from '../song/phonemes'
import { controlRate, fillTrack, newTrack, smoothed } from '../song/track'

export type FormantTracks = readonly [Float64Array, Float64Array, Float64Array]

/**
 * The jaw, which moves the first formant, and the tongue, which moves the others, set out this long before a sound
 * begins and arrive this long after: in recorded voices formants sweep for 80 to 120 ms of a vowel. No source.
 */
const transitionSeconds = [0.06, 0.095, 0.095] as const
/** Nobody holds the mouth quite still: each formant wanders by up to this share. No source. */
const driftShare = 0.03
const driftSeconds = 0.25
const glideSteps = 20

/** Formants along the song, Hz: from sound to sound as the mouth moves, glides inside diphthongs, a slow drift. */
export function formantTracks(segments: readonly Segment[], seconds: number, random: Random): FormantTracks {
  const targets: FormantTracks = [
    newTrack(seconds).fill(phonemes.silence.formantsHz[0]),
    newTrack(seconds).fill(phonemes.silence.formantsHz[1]),
    newTrack(seconds).fill(phonemes.silence.formantsHz[2]),
  ]
  for (const segment of segments) fillTargets(targets, segment)
  const moving = (formant: 0 | 1 | 2) => {
    const drift = driftTrack(seconds, random)
    return smoothed(targets[formant], transitionSeconds[formant]).map((hz, i) => hz * (drift[i] ?? 1))
  }
  return [moving(0), moving(1), moving(2)]
}

function fillTargets(targets: FormantTracks, { symbol, startSeconds, endSeconds }: Segment): void {
  const fill = (formants: Formants, from: number) => {
    targets.forEach((track, formant) => {
      fillTrack(track, from, endSeconds, formants[formant] ?? 0)
    })
  }
  const { formantsHz, glideHz } = phoneme(symbol)
  fill(formantsHz, startSeconds)
  if (!glideHz) return
  const glideSeconds = (endSeconds - startSeconds) / 2
  for (let step = 1; step <= glideSteps; step += 1) {
    const share = step / glideSteps
    const glided = (formant: 0 | 1 | 2) =>
      formantsHz[formant] + (glideHz[formant] - formantsHz[formant]) * share
    fill(
      [glided(0), glided(1), glided(2)],
      endSeconds - glideSeconds + (glideSeconds * (step - 1)) / glideSteps,
    )
  }
}

/** A factor around 1 that goes from one random value to the next along a cosine. */
function driftTrack(seconds: number, random: Random): Float64Array {
  const track = newTrack(seconds)
  const stride = driftSeconds * controlRate
  const draw = () => between(random, [1 - driftShare, 1 + driftShare])
  let next = draw()
  for (let first = 0; first < track.length; first += stride) {
    const from = next
    next = draw()
    const end = Math.min(track.length, first + stride)
    for (let index = first; index < end; index += 1) {
      const share = (1 - Math.cos((Math.PI * (index - first)) / stride)) / 2
      track[index] = from + (next - from) * share
    }
  }
  return track
}
