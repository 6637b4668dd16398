import { powerToDb } from '../../sound/decibels'
import type { FrameRange } from '../../sound/frame-range'
import { frameCount, type Sound } from '../../sound/sound'
import { finished, STEP_FRAMES, type Steps } from '../../sound/steps'

const WINDOW_SECONDS = 0.05
/** Fewer windows than this (half a second) say nothing about pauses. */
const FEWEST_WINDOWS = 10
const QUIETEST_PART = 0.1
/**
 * A pause is no louder than this beside the quietest tenth: 6 dB. Windows of pink noise stay within it, what is sung or
 * dies away passes through it in a window or two. Chosen, no source.
 */
const LARGEST_RATIO = 4
/** A pause with this many windows has one between those in which it begins and ends. */
const FEWEST_IN_PAUSE = 3

/** Where a take pauses: the numbers of windows of 50 ms, in order. */
export type Pauses = readonly number[]

/**
 * The pauses of a take, found by the quietest tenth of its windows: stretches that are at most 6 dB louder than these
 * are on average, without the windows in which they begin and end. All of a pause counts, not only its quietest
 * windows, because noise varies, low-pitched noise most, and its quietest moments lie below its level. Where no stretch
 * has three windows, the quietest tenth itself. Windows that hold nothing but zeros are left out: somebody muted them,
 * and what is not there has no level.
 *
 * @returns null when fewer than ten windows hold anything
 */
export function pausesOf(sound: Sound): Pauses | null {
  return finished(pausesSteps(sound))
}

/** {@link pausesOf} in steps. */
export function* pausesSteps(sound: Sound): Steps<Pauses | null> {
  const count = Math.floor(frameCount(sound) / windowFrames(sound))
  const powers = new Float64Array(count)
  const windows = windowsInStep(sound)
  for (let from = 0; from < count; from += windows) {
    const to = Math.min(count, from + windows)
    for (let window = from; window < to; window++) powers[window] = windowPower(sound, window)
    yield to / count
  }
  const alive = powers.filter((power) => power > 0).sort()
  if (alive.length < FEWEST_WINDOWS) return null
  const quietest = alive.subarray(0, Math.floor(alive.length * QUIETEST_PART))
  const limit = (LARGEST_RATIO * quietest.reduce((sum, power) => sum + power, 0)) / quietest.length
  const inPauses = insidesOf(powers, limit)
  if (inPauses.length > 0) return inPauses
  const loudest = quietest.at(-1) ?? 0
  return [...powers.keys()].filter((window) => isQuiet(powers[window], loudest))
}

/**
 * The pauses of a take within a range of it, counted in windows from its start. A window of the range counts where it
 * lies wholly in a pause.
 */
export function pausesWithin(pauses: Pauses, { from, to }: FrameRange, sampleRate: number): Pauses {
  const length = windowFrames({ sampleRate })
  const inPauses = new Set(pauses)
  const isPause = (window: number) => {
    const start = from + window * length
    const end = start + length
    return inPauses.has(Math.floor(start / length)) && inPauses.has(Math.ceil(end / length) - 1)
  }
  return [...Array(Math.max(0, Math.floor((to - from) / length))).keys()].filter(isPause)
}

/** Windows within stretches up to the limit; at either end of the sound nothing begins or ends. */
function insidesOf(powers: Float64Array, limit: number): number[] {
  const inside: number[] = []
  let start = 0
  for (let end = 0; end <= powers.length; end++) {
    if (end < powers.length && isQuiet(powers[end], limit)) continue
    if (end - start >= FEWEST_IN_PAUSE) {
      const last = end === powers.length ? end : end - 1
      for (let window = start === 0 ? 0 : start + 1; window < last; window++) inside.push(window)
    }
    start = end + 1
  }
  return inside
}

function isQuiet(power: number | undefined, limit: number): boolean {
  return power !== undefined && power > 0 && power <= limit
}

/**
 * Noise floor, dBFS (root mean square, unweighted, mean of the channels): the level of a take in its pauses. That is
 * the room and the microphone; in a take without pauses, its softest singing, so it can be too high. Measured: within
 * 0.3 dB of the level of white noise, of hum and of pink noise from 20 Hz up; 0.5 dB low in pink noise that goes down to
 * 1 Hz; up to 0.6 dB high where singing dies away into the noise over more than a second.
 *
 * A definition of our own, as no standard has one for takes. It is near to the background level of environmental
 * noise, the level exceeded for 90 % of the time (LA90, BS 4142; from memory), by which the pauses are found.
 *
 * A processed take is to be measured in the pauses of the take it was made from. Its own would be other windows: a
 * filter rings on into muted ones, and the fading ring of it, which nobody recorded, would count as the floor.
 *
 * @param pauses of the take that the sound was made from; null where it has none
 * @returns null where there are no pauses, or nothing but zeros in them
 */
export function noiseFloorDbfs(sound: Sound, pauses = pausesOf(sound)): number | null {
  return finished(noiseFloorSteps(sound, pauses))
}

/** {@link noiseFloorDbfs} in steps. */
export function* noiseFloorSteps(sound: Sound, pauses: Pauses | null): Steps<number | null> {
  if (!pauses || pauses.length === 0) return null
  const windows = windowsInStep(sound)
  let sum = 0
  for (const [index, window] of pauses.entries()) {
    sum += windowPower(sound, window)
    if ((index + 1) % windows === 0) yield (index + 1) / pauses.length
  }
  const power = sum / pauses.length
  return power > 0 ? powerToDb(power) : null
}

/** Windows looked at in one step. */
function windowsInStep(sound: Sound): number {
  return Math.max(1, Math.floor(STEP_FRAMES / (windowFrames(sound) * Math.max(1, sound.channels.length))))
}

function windowFrames({ sampleRate }: Pick<Sound, 'sampleRate'>): number {
  return Math.max(1, Math.round(sampleRate * WINDOW_SECONDS))
}

function windowPower(sound: Sound, window: number): number {
  const length = windowFrames(sound)
  let squares = 0
  for (const samples of sound.channels) {
    const end = Math.min(samples.length, (window + 1) * length)
    for (let i = window * length; i < end; i++) {
      const value = samples[i] ?? 0
      squares += value * value
    }
  }
  return squares / (length * sound.channels.length)
}
