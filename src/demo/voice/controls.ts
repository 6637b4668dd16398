import { dbToGain } from '../../core'
import type { Segment } from '../song/layout'
import { phoneme } from '../song/phonemes'
import { controlRate, fillTrack, newTrack, smoothed } from '../song/track'
import { dynamicsTrack } from './dynamics'
import { burstStart } from './stops'

/** How hard the larynx and the breath work along the song: control tracks. Gains are against a vowel's. */
export interface Controls {
  readonly voiceGain: Float64Array
  /** Breath without voice: an inhalation, the puff behind a stop. */
  readonly breathGain: Float64Array
  /** How much wider than a vowel's the resonances are. */
  readonly damping: Float64Array
}

const dampingSeconds = 0.045
const voiceSeconds = 0.018
const breathSeconds = 0.012
const puffGain = dbToGain(-20)
const inhalationGain = dbToGain(-27)

/** The control tracks of the laid-out song over `seconds`; `ripple` is the gain that comes with the vibrato. */
export function controlTracks(segments: readonly Segment[], seconds: number, ripple: Float64Array): Controls {
  const voice = newTrack(seconds)
  const breath = newTrack(seconds)
  const damping = newTrack(seconds).fill(1)
  for (const { symbol, startSeconds: start, endSeconds: end, afterSibilant } of segments) {
    const { kind, voiceDb, damping: width = 1 } = phoneme(symbol)
    fillTrack(damping, start, end, width)
    if (voiceDb !== undefined) fillTrack(voice, start, end, dbToGain(voiceDb))
    if (kind === 'stop' && voiceDb === undefined && !afterSibilant) {
      fillTrack(breath, burstStart(start, end), end, puffGain)
    }
    if (kind === 'breath') fillBreath(breath, start, end)
  }
  const dynamics = dynamicsTrack(segments, seconds)
  const shaped = voice.map((gain, i) => gain * (dynamics[i] ?? 1) * (ripple[i] ?? 1))
  return {
    voiceGain: smoothed(shaped, voiceSeconds),
    breathGain: smoothed(breath, breathSeconds),
    damping: smoothed(damping, dampingSeconds),
  }
}

/** An inhalation swells and stops. */
function fillBreath(track: Float64Array, startSeconds: number, endSeconds: number): void {
  const first = Math.round(startSeconds * controlRate)
  const last = Math.round(endSeconds * controlRate)
  for (let index = first; index < last; index += 1) {
    const share = (index - first) / (last - first)
    track[index] = inhalationGain * Math.sin(Math.PI * share ** 1.5) ** 2
  }
}
