import { dbToGain } from '../core/dsp/decibels'
import { dynamicsTrack } from './dynamics'
import type { Segment } from './layout'
import { type Formants, type Place, phoneme, phonemes } from './phonemes'
import { controlRate, fillTrack, newTrack, smoothed } from './track'

/** What the mouth and the larynx do along the song: control tracks. Gains are against a vowel's. */
export interface Controls {
  readonly voiceGain: Float64Array
  readonly breathGain: Float64Array
  readonly formantsHz: readonly [Float64Array, Float64Array, Float64Array]
  readonly damping: Float64Array
  readonly sibilance: Readonly<Record<Place, Float64Array>>
  readonly otherNoise: Readonly<Record<Place, Float64Array>>
}

const tongueSeconds = 0.045
const amplitudeSeconds = 0.012
const breathinessGain = dbToGain(-32)
const aspirationGain = dbToGain(-20)
const inhalationGain = dbToGain(-27)
/** Share of a stop during which the mouth is shut. */
const closedShare = 0.55
const burstSeconds = 0.007

/** The control tracks of the laid-out song over `seconds`. */
export function controlTracks(segments: readonly Segment[], seconds: number): Controls {
  const placeTracks = () => ({
    alveolar: newTrack(seconds),
    palatal: newTrack(seconds),
    labial: newTrack(seconds),
  })
  const voice = newTrack(seconds)
  const breath = newTrack(seconds)
  const damping = newTrack(seconds).fill(1)
  const sibilance = placeTracks()
  const otherNoise = placeTracks()

  for (const { symbol, startSeconds: start, endSeconds: end, afterSibilant } of segments) {
    const { kind, voiceDb, noise, damping: width = 1 } = phoneme(symbol)
    fillTrack(damping, start, end, width)
    if (voiceDb !== undefined) {
      fillTrack(voice, start, end, dbToGain(voiceDb))
      fillTrack(breath, start, end, breathinessGain * dbToGain(voiceDb))
    }
    if (kind === 'stop' && voiceDb === undefined && !afterSibilant) {
      fillTrack(breath, start + closedShare * (end - start), end, aspirationGain)
    }
    if (kind === 'breath') fillBreath(breath, start, end)
    if (noise && kind !== 'stop') {
      const tracks = kind === 'sibilant' ? sibilance : otherNoise
      fillTrack(tracks[noise.place], start, end, dbToGain(noise.levelDb))
    }
  }
  const smoothedPlaces = (tracks: Record<Place, Float64Array>) => ({
    alveolar: smoothed(tracks.alveolar, amplitudeSeconds),
    palatal: smoothed(tracks.palatal, amplitudeSeconds),
    labial: smoothed(tracks.labial, amplitudeSeconds),
  })
  const dynamics = dynamicsTrack(segments, seconds)
  const shaped = (track: Float64Array) => track.map((gain, i) => gain * (dynamics[i] ?? 1))
  const softened = smoothedPlaces(otherNoise)
  addBursts(softened, segments)
  return {
    voiceGain: smoothed(shaped(voice), amplitudeSeconds),
    breathGain: smoothed(shaped(breath), amplitudeSeconds),
    formantsHz: formantTracks(segments, seconds),
    damping: smoothed(damping, tongueSeconds),
    sibilance: smoothedPlaces(sibilance),
    otherNoise: softened,
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

/** The click of air when a stop opens; too short to be smoothed, so it is added afterwards. */
function addBursts(tracks: Readonly<Record<Place, Float64Array>>, segments: readonly Segment[]): void {
  for (const { symbol, startSeconds, endSeconds } of segments) {
    const { kind, noise } = phoneme(symbol)
    if (kind !== 'stop' || !noise) continue
    const track = tracks[noise.place]
    const opening = Math.round(burstStart(startSeconds, endSeconds) * controlRate)
    const gain = dbToGain(noise.levelDb)
    for (let index = 0; index < 6 * burstSeconds * controlRate; index += 1) {
      track[opening + index] =
        (track[opening + index] ?? 0) + gain * Math.exp(-index / controlRate / burstSeconds)
    }
  }
}

/** When a stop between these two times opens, seconds. */
export function burstStart(startSeconds: number, endSeconds: number): number {
  return startSeconds + closedShare * (endSeconds - startSeconds)
}

function formantTracks(segments: readonly Segment[], seconds: number): Controls['formantsHz'] {
  const tracks: [Float64Array, Float64Array, Float64Array] = [
    newTrack(seconds).fill(phonemes.silence.formantsHz[0]),
    newTrack(seconds).fill(phonemes.silence.formantsHz[1]),
    newTrack(seconds).fill(phonemes.silence.formantsHz[2]),
  ]
  const fill = (formants: Formants, start: number, end: number) => {
    tracks.forEach((track, index) => {
      fillTrack(track, start, end, formants[index] ?? 0)
    })
  }
  for (const { symbol, startSeconds, endSeconds } of segments) {
    const { formantsHz, glideHz } = phoneme(symbol)
    fill(formantsHz, startSeconds, endSeconds)
    if (!glideHz) continue
    const first = startSeconds + 0.5 * (endSeconds - startSeconds)
    const steps = 20
    for (let step = 1; step <= steps; step += 1) {
      const share = step / steps
      const between = (from: number, to: number) => from + (to - from) * share
      const at = first + ((endSeconds - first) * (step - 1)) / steps
      fill(
        [
          between(formantsHz[0], glideHz[0]),
          between(formantsHz[1], glideHz[1]),
          between(formantsHz[2], glideHz[2]),
        ],
        at,
        endSeconds,
      )
    }
  }
  return [
    smoothed(tracks[0], tongueSeconds),
    smoothed(tracks[1], tongueSeconds),
    smoothed(tracks[2], tongueSeconds),
  ]
}
