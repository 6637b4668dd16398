import { powerToDb } from '../dsp/decibels'
import { frameCount, type Sound } from '../sound'

const WINDOW_SECONDS = 0.05
/** Fewer windows than this (half a second) say nothing about pauses. */
const FEWEST_WINDOWS = 10
const QUIETEST_PART = 0.1

/**
 * Noise floor, dBFS (root mean square, unweighted, mean of the channels): the level of the quietest tenth of
 * all 50 ms windows. In a take with pauses that is the room and the microphone; in one without, its softest
 * singing, so it can only be too high. Windows of nothing but zeros were muted by somebody and are left out.
 * Null when fewer than ten windows remain. A definition of our own: no standard has one.
 */
export function noiseFloorDbfs(sound: Sound): number | null {
  const length = Math.max(1, Math.round(sound.sampleRate * WINDOW_SECONDS))
  const powers = new Float64Array(Math.floor(frameCount(sound) / length))
  for (const samples of sound.channels) {
    for (let window = 0; window < powers.length; window++) {
      let squares = 0
      for (let i = window * length; i < (window + 1) * length; i++) squares += (samples[i] ?? 0) ** 2
      powers[window] = (powers[window] ?? 0) + squares / (length * sound.channels.length)
    }
  }
  const alive = powers.filter((power) => power > 0).sort()
  if (alive.length < FEWEST_WINDOWS) return null
  const quietest = alive.subarray(0, Math.floor(alive.length * QUIETEST_PART))
  return powerToDb(quietest.reduce((sum, power) => sum + power, 0) / quietest.length)
}
