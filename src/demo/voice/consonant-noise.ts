import { dbToGain } from '../../core'
import { between, type Random, seededRandom } from '../../core/primitives'
import type { Segment } from '../song/layout'
import { toFrame } from '../song/levels'
import { type Place, phoneme } from '../song/phonemes'
import { sampleRate } from '../song/track'
import { type EdgeSlide, frication } from './frication'
import { burstStart } from './stops'

/** What the consonants hiss, as linear samples; mean square 1 is the level of the vowels. */
export interface ConsonantNoise {
  readonly sibilance: Float64Array
  /** Bursts of stops, f, dh. */
  readonly other: Float64Array
}

/**
 * From nothing to all of a sibilant or f, along a straight line around its start or end: 15 to 40 ms of that are the
 * rise from -20 to -6 dB. Measured on recorded voices: 3 to 41 ms, median 13.
 */
const rampSeconds = [0.04, 0.095] as const
/** A tongue that shuts for a stop ends a hiss at once. */
const shuttingSeconds = 0.025
const levelSpreadDb = 2
/**
 * By how much the lower edge of a hiss falls as the mouth opens; seen in recorded voices, the figures are our own. That
 * of /sh/ is low already.
 */
const edgeSlideHz: Readonly<Record<Place, readonly [number, number]>> = {
  alveolar: [1500, 2200],
  palatal: [700, 1100],
  labial: [1500, 2200],
}
const burstSeconds = 0.007
const burstLength = 6

/** The noise of every consonant in `frames` of the laid-out song. No two sibilants are alike. */
export function consonantNoise(segments: readonly Segment[], frames: number, seed: number): ConsonantNoise {
  const random = seededRandom(seed)
  const noise = { sibilance: new Float64Array(frames), other: new Float64Array(frames) }
  segments.forEach((segment, index) => {
    const { kind, noise: made } = phoneme(segment.symbol)
    if (!made) return
    const hiss = { place: made.place, gain: dbToGain(made.levelDb), seed: seed + index }
    if (kind === 'stop') addBurst(noise.other, segment, hiss)
    else if (kind === 'voiced-consonant') {
      addSwell(noise.other, segment, hiss, { rise: shuttingSeconds, fall: shuttingSeconds })
    } else {
      const target = kind === 'sibilant' ? noise.sibilance : noise.other
      const gain = hiss.gain * dbToGain(between(random, [-levelSpreadDb, levelSpreadDb]))
      const [before, after] = [segments[index - 1], segments[index + 1]]
      const ramps = swellRamps(segment, after, random)
      const edge = edgeSlide(isOpen(before), isOpen(after), between(random, edgeSlideHz[made.place]))
      addSwell(target, segment, { ...hiss, gain, edge }, ramps)
    }
  })
  return noise
}

interface Hiss {
  readonly place: Place
  readonly gain: number
  readonly seed: number
  readonly edge?: EdgeSlide
}

interface Ramps {
  readonly rise: number
  readonly fall: number
}

function swellRamps(segment: Segment, after: Segment | undefined, random: Random): Ramps {
  const longest = 0.7 * (segment.endSeconds - segment.startSeconds)
  const ramp = () => Math.min(longest, between(random, rampSeconds))
  const rise = ramp()
  const fall = ramp()
  const shuts = after !== undefined && phoneme(after.symbol).kind === 'stop'
  return { rise, fall: shuts ? shuttingSeconds : fall }
}

/** Whether the mouth is open enough for a tone in this sound. */
function isOpen(segment: Segment | undefined): boolean {
  if (!segment) return false
  const { voiceDb, noise } = phoneme(segment.symbol)
  return voiceDb !== undefined && !noise
}

/** High where the mouth is nearly shut, low towards the open sounds beside the hiss; `share` runs from 0 to 1. */
function edgeSlide(openBefore: boolean, openAfter: boolean, slideHz: number): EdgeSlide {
  const reach = openBefore && openAfter ? 0.5 : 1
  return (share) => {
    const before = openBefore ? 1 - share / reach : 0
    const after = openAfter ? 1 - (1 - share) / reach : 0
    return slideHz * (0.5 - Math.max(0, before, after))
  }
}

/** Half its level at its start and its end. */
function addSwell(target: Float64Array, segment: Segment, hiss: Hiss, { rise, fall }: Ramps): void {
  const { startSeconds, endSeconds } = segment
  const first = toFrame(Math.max(0, startSeconds - rise / 2))
  const last = Math.min(target.length, toFrame(endSeconds + fall / 2))
  const samples = frication(hiss.place, last - first, hiss.seed, hiss.edge)
  for (let i = first; i < last; i += 1) {
    const seconds = i / sampleRate
    const up = (seconds - startSeconds) / rise + 0.5
    const down = (endSeconds - seconds) / fall + 0.5
    const gain = hiss.gain * Math.max(0, Math.min(1, up, down))
    target[i] = (target[i] ?? 0) + gain * (samples[i - first] ?? 0)
  }
}

/** The click of air when a stop opens. */
function addBurst(target: Float64Array, { startSeconds, endSeconds }: Segment, hiss: Hiss): void {
  const first = toFrame(burstStart(startSeconds, endSeconds))
  const last = Math.min(target.length, first + toFrame(burstLength * burstSeconds))
  const samples = frication(hiss.place, last - first, hiss.seed)
  for (let i = first; i < last; i += 1) {
    const gain = hiss.gain * Math.exp(-(i - first) / sampleRate / burstSeconds)
    target[i] = (target[i] ?? 0) + gain * (samples[i - first] ?? 0)
  }
}
