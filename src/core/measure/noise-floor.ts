import { powerToDb } from '../dsp/decibels'
import { frameCount, type Sound } from '../sound'

const WINDOW_SECONDS = 0.05
/** Fewer windows than this (half a second) say nothing about pauses. */
const FEWEST_WINDOWS = 10
const QUIETEST_PART = 0.1

/** Where a take pauses: the numbers of its quietest windows of 50 ms, in the order of their level. */
export type Pauses = readonly number[]

/**
 * The quietest tenth of all 50 ms windows, those left out that hold nothing but zeros: somebody muted them, and what is
 * not there has no level. Null when fewer than ten windows remain.
 */
export function pausesOf(sound: Sound): Pauses | null {
  const length = windowFrames(sound)
  const alive = Array.from({ length: Math.floor(frameCount(sound) / length) }, (_, window) => ({
    window,
    power: windowPower(sound, window),
  })).filter(({ power }) => power > 0)
  if (alive.length < FEWEST_WINDOWS) return null
  return alive
    .sort((a, b) => a.power - b.power)
    .slice(0, Math.floor(alive.length * QUIETEST_PART))
    .map(({ window }) => window)
}

/**
 * Noise floor, dBFS (root mean square, unweighted, mean of the channels): the level of a take in its pauses. That is
 * the room and the microphone; in a take without pauses, its softest singing, so it can only be too high.
 *
 * A definition of our own, as no standard has one for takes. It is near to the background level of environmental
 * noise, the level exceeded for 90 % of the time (LA90, BS 4142; from memory): the mean of the tenth below that.
 *
 * A processed take is to be measured in the pauses of the take it was made from. Its own would be other windows: a
 * filter rings on into muted ones, and the fading ring of it, which nobody recorded, would count as the floor.
 *
 * @param pauses of the take that the sound was made from; null where it has none
 * @returns null where there are no pauses, or nothing but zeros in them
 */
export function noiseFloorDbfs(sound: Sound, pauses = pausesOf(sound)): number | null {
  if (!pauses || pauses.length === 0) return null
  const power = pauses.reduce((sum, window) => sum + windowPower(sound, window), 0) / pauses.length
  return power > 0 ? powerToDb(power) : null
}

function windowFrames({ sampleRate }: Sound): number {
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
