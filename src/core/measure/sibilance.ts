import { powerToDb } from '../dsp/decibels'
import type { Sound } from '../sound'
import { type BandPowers, bandPowerSteps } from './band-powers'
import { MeasureError } from './error'
import { finished } from './finished'
import { monoMix } from './mono'

export interface SibilantEvent {
  readonly startSeconds: number
  readonly endSeconds: number
  /** Level of the sibilant less that of the loudest moment within 0.3 s on either side; null if none is near. */
  readonly levelDb: number | null
}

/**
 * Between the highest third formant, 3310 Hz (women's /i/: G. E. Peterson, H. L. Barney, JASA 24(2), 1952), and the
 * lowest spectral peak of a sibilant, 3820 Hz (/sh/: A. Jongman, R. Wayland, S. Wong, "Acoustic characteristics
 * of English fricatives", JASA 108(3), 2000). The peak of /s/ lies near 6840 Hz.
 */
const SPLIT_HZ = 3500
/** Hiss this far below the loudest moments of the sound is room, not voice: 40 dB. Chosen, no source. */
const FAINT_RATIO = 1e-4
/** The loudest moments: this part of all, so that one click does not set the scale. */
const LOUD_PERCENTILE = 0.95
/** A dip shorter than this does not end an event; an event shorter than this is a click or a T. */
const LONGEST_DIP_SECONDS = 0.015
const SHORTEST_EVENT_SECONDS = 0.03
/** How far from a sibilant the vowels next to it are looked for. */
export const NEIGHBOUR_SECONDS = 0.3
/** Jongman et al. (2000): /s/ and /sh/ lie 11 and 10 dB below the vowel, /f/ and /th/ 21 and 22. */
const FAINTEST_DB = -20

/**
 * The sibilants of a voice: spans of at least 30 ms where the band above 3.5 kHz outweighs the rest (100 Hz to
 * 3.5 kHz), unless they are fainter than the loudest moments of the sound by 40 dB or than the vowels next to
 * them by 20 dB, as F and most Ts are. Channels are mixed to one. In order, never overlapping.
 *
 * Levels compare like the noise levels of Jongman et al. (2000), where /s/ lies 11 dB and /sh/ 10 dB below the
 * vowel on average: root mean square of the sibilant against the vowel at its strongest, here over about 10 ms.
 *
 * @throws MeasureError `sample-rate` below 10.5 kHz, which leaves no band above the split
 */
export function sibilantEvents(sound: Sound): SibilantEvent[] {
  return finished(sibilantEventSteps(sound))
}

/** {@link sibilantEvents} in steps: yields the share done. */
export function* sibilantEventSteps(sound: Sound): Generator<number, SibilantEvent[], void> {
  if (!hasSibilantBand(sound)) {
    throw new MeasureError(
      'sample-rate',
      `sample rate ${sound.sampleRate} Hz (expected at least ${3 * SPLIT_HZ})`,
    )
  }
  const bands = yield* bandPowerSteps(monoMix(sound), sound.sampleRate, SPLIT_HZ)
  const total = bands.above.map((power, i) => power + (bands.below[i] ?? 0))
  const faint = FAINT_RATIO * (total.toSorted()[Math.floor(LOUD_PERCENTILE * (total.length - 1))] ?? 0)
  const hissing = Array.from(bands.above, (power, i) => power > faint && power > (bands.below[i] ?? 0))
  return joinedSpans(hissing, Math.round(LONGEST_DIP_SECONDS / bands.hopSeconds))
    .filter(([from, to]) => (to - from) * bands.hopSeconds >= SHORTEST_EVENT_SECONDS)
    .map(([from, to]) => ({
      startSeconds: Math.max(0, (from - 0.5) * bands.hopSeconds),
      endSeconds: (to - 0.5) * bands.hopSeconds,
      levelDb: levelAgainstNeighbours(bands, total, hissing, from, to),
    }))
    .filter(({ levelDb }) => levelDb === null || levelDb >= FAINTEST_DB)
}

/** Whether the sample rate leaves a band above the split. */
export function hasSibilantBand({ sampleRate }: Sound): boolean {
  return sampleRate >= 3 * SPLIT_HZ
}

/** Spans [from, to) of true, those no more than `dip` apart joined. */
function joinedSpans(flags: readonly boolean[], dip: number): [number, number][] {
  const spans: [number, number][] = []
  flags.forEach((flag, i) => {
    if (!flag) return
    const last = spans.at(-1)
    if (last && i - last[1] <= dip) last[1] = i + 1
    else spans.push([i, i + 1])
  })
  return spans
}

function levelAgainstNeighbours(
  { hopSeconds, above, below }: BandPowers,
  total: Float64Array,
  hissing: readonly boolean[],
  from: number,
  to: number,
): number | null {
  const reach = Math.round(NEIGHBOUR_SECONDS / hopSeconds)
  let vowel = 0
  for (let i = Math.max(0, from - reach); i < Math.min(total.length, to + reach); i++) {
    if (!hissing[i]) vowel = Math.max(vowel, total[i] ?? 0)
  }
  let power = 0
  for (let i = from; i < to; i++) power += ((above[i] ?? 0) + (below[i] ?? 0)) / (to - from)
  return vowel > power * 1e-3 ? powerToDb(power / vowel) : null
}
