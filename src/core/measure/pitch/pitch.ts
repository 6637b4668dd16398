import { frameCount, type Sound } from '../../sound/sound'
import { finished, STEP_FRAMES, type Steps } from '../../sound/steps'
import { MeasureError } from '../error'
import { FilteredMono } from './filtered-mono'
import { type Period, Yin } from './yin'

export interface PitchOptions {
  /** Lowest fundamental looked for, Hz; 60 by default (a bass's lowest E is 82). */
  readonly lowestHz?: number
  /** Highest fundamental looked for, Hz; 1200 by default (a soprano's high C is 1047). */
  readonly highestHz?: number
  /** Distance between estimates, seconds, from 0.001; 0.01 by default. */
  readonly hopSeconds?: number
}

export interface PitchFrame {
  /** Middle of what was compared: two windows of 25 ms, one a period behind the other. */
  readonly timeSeconds: number
  /** Fundamental; null where nothing is sung. */
  readonly frequencyHz: number | null
  /** 1 for a sound that repeats exactly, about 0 for noise; 0 in silence. */
  readonly confidence: number
}

/** The window of the paper's own evaluation (from memory). */
const WINDOW_SECONDS = 0.025
/** The absolute threshold of step 4 that the paper uses. */
const THRESHOLD = 0.1
/** Above this aperiodicity no pitch is reported: breath and consonants. Chosen, no source. */
const UNVOICED = 0.2
/** This far below the loudest stretch, 50 dB, it is room or tail, not singing. Chosen, no source. */
const QUIET_RATIO = 1e-5
/** Step 6 searches again within this part of the best neighbour's period. */
const RETRY_PART = 0.2
/** How much of the work the search is. */
const SEARCH_PART = 0.99
/** Each frame costs about as much as this many passes over its samples do elsewhere. Measured, no source. */
const PASSES = 4
/** Frames put together in one step once all periods are known. */
const FRAMES_TOLD_IN_STEP = 4096

/**
 * Fundamental frequency along a sound by YIN (steps 1 to 6; see {@link Yin}), channels mixed to one. Rumble
 * below the lowest fundamental is filtered out first. Only stretches wholly within the sound are looked at.
 *
 * Windows start every `hopSeconds`, and the pitch found is that of the middle of what was compared, so the times given
 * lie half a period later where the voice is low: a hop apart, give or take half the change of the period. They are
 * in order for hops of 8.5 ms and more at the default range. Times are within 0.5 ms on average (measured on glides);
 * single ones lean up to 3 ms to where the voice is strongest within a low period.
 *
 * @throws MeasureError `option` unless 20 <= lowestHz < highestHz <= a quarter of the sample rate
 */
export function pitchTrack(sound: Sound, options: PitchOptions = {}): PitchFrame[] {
  return finished(pitchSteps(sound, options))
}

/** {@link pitchTrack} in steps. */
export function* pitchSteps(sound: Sound, options: PitchOptions = {}): Steps<PitchFrame[]> {
  const { lowestHz = 60, highestHz = 1200, hopSeconds = 0.01 } = options
  const { sampleRate } = sound
  if (!(lowestHz >= 20 && lowestHz < highestHz && highestHz <= sampleRate / 4 && hopSeconds >= 0.001)) {
    throw new MeasureError('option', `pitch from ${lowestHz} to ${highestHz} Hz every ${hopSeconds} s`)
  }
  const shortestLag = Math.floor(sampleRate / highestHz)
  const longestLag = Math.ceil(sampleRate / lowestHz)
  const windowFrames = Math.round(WINDOW_SECONDS * sampleRate)
  const yin = new Yin(windowFrames, longestLag)
  const count = Math.max(0, Math.floor((frameCount(sound) - yin.span) / sampleRate / hopSeconds) + 1)
  const startOf = (frame: number) => Math.round(frame * hopSeconds * sampleRate)
  const longestHop = Math.ceil(hopSeconds * sampleRate)
  const mono = new FilteredMono(sound, lowestHz, yin.span, longestHop)
  const powers = new Float64Array(count)
  const periodAt = (frame: number): Period => {
    powers[frame] = yin.analyse(mono.read(startOf(frame)))
    return yin.period(THRESHOLD, shortestLag, longestLag)
  }
  const periods: Period[] = []
  const framesInStep = Math.max(1, Math.floor(STEP_FRAMES / PASSES / Math.max(yin.span, longestHop)))
  let before: Period | undefined
  let here = count > 0 ? periodAt(0) : undefined
  for (let frame = 0; here; frame++) {
    const after = frame + 1 < count ? periodAt(frame + 1) : undefined
    const best = clearest(before, here, after)
    if (Math.abs(best.lag - here.lag) > RETRY_PART * best.lag) {
      // Step 6, best local estimate: trust the clearer neighbour for where to look, this frame for the value.
      yin.analyse(mono.read(startOf(frame)))
      const range: [number, number] = [best.lag * (1 - RETRY_PART), best.lag * (1 + RETRY_PART)]
      periods.push(yin.period(0, Math.ceil(range[0]), Math.floor(range[1])))
    } else {
      periods.push(here)
    }
    before = here
    here = after
    if (periods.length % framesInStep === 0) yield (periods.length / count) * SEARCH_PART
  }
  const quiet = QUIET_RATIO * powers.reduce((most, power) => Math.max(most, power), 0)
  const track: PitchFrame[] = []
  for (const { lag, aperiodicity } of periods) {
    const frame = track.length
    const sung = aperiodicity < UNVOICED && (powers[frame] ?? 0) > quiet
    track.push({
      timeSeconds: (startOf(frame) + (windowFrames + lag) / 2) / sampleRate,
      frequencyHz: sung ? sampleRate / lag : null,
      confidence: Math.min(1, Math.max(0, 1 - aperiodicity)),
    })
    if (track.length % FRAMES_TOLD_IN_STEP === 0)
      yield SEARCH_PART + (track.length / count) * (1 - SEARCH_PART)
  }
  return track
}

/** The clearest of a frame's period and its neighbours', the earliest where several are. */
function clearest(before: Period | undefined, here: Period, after: Period | undefined): Period {
  const best = before && before.aperiodicity <= here.aperiodicity ? before : here
  return after && after.aperiodicity < best.aperiodicity ? after : best
}
