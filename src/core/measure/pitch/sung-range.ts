import type { PitchFrame } from './pitch'

export interface SungRange {
  readonly lowestHz: number
  readonly highestHz: number
}

const LOW_PERCENTILE = 5
const HIGH_PERCENTILE = 95
/** A note holds its pitch to a whole tone from frame to frame; octave errors and consonants do not. */
const LARGEST_STEP = 2 ** (2 / 12)
/** Frames that a steady stretch must have at least: 50 ms at the default hop. */
const FEWEST_FRAMES = 5

/**
 * The range in regular use: the 5th and 95th percentile, over time, of the pitch of steady stretches (at least
 * five frames in a row without a step of more than a whole tone). Null when there is none. The percentiles
 * are a choice of our own; they leave out slips and slides.
 */
export function sungRange(track: readonly PitchFrame[]): SungRange | null {
  const steady = steadyStretches(track)
    .filter((stretch) => stretch.length >= FEWEST_FRAMES)
    .flat()
    .sort((a, b) => a - b)
  const at = (percent: number) => steady[Math.round(((steady.length - 1) * percent) / 100)]
  const lowestHz = at(LOW_PERCENTILE)
  const highestHz = at(HIGH_PERCENTILE)
  return lowestHz === undefined || highestHz === undefined ? null : { lowestHz, highestHz }
}

function steadyStretches(track: readonly PitchFrame[]): number[][] {
  const stretches: number[][] = []
  let previous: number | null = null
  for (const { frequencyHz } of track) {
    if (frequencyHz !== null) {
      const step = previous === null ? Number.POSITIVE_INFINITY : frequencyHz / previous
      if (step < LARGEST_STEP && step > 1 / LARGEST_STEP) stretches.at(-1)?.push(frequencyHz)
      else stretches.push([frequencyHz])
    }
    previous = frequencyHz
  }
  return stretches
}
