import { nthSmallestSteps } from '../../dsp/numeric/selection'
import { powerToDb } from '../../sound/decibels'
import type { FrameRange } from '../../sound/frame-range'
import type { Sound } from '../../sound/sound'
import { finished, partOf, STEP_FRAMES, type Steps } from '../../sound/steps'
import { MeasureError } from '../error'
import { type BandPowers, bandPowerSteps } from '../spectrum/band-powers'
import { ShortSpectra } from '../spectrum/short-spectra'
import { hissShape, isSibilantShape } from './sibilant-shape'

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
/** A dip shorter than this does not end an event; an event shorter than this is a click. */
const LONGEST_DIP_SECONDS = 0.015
const SHORTEST_EVENT_SECONDS = 0.03
/**
 * A hiss shorter than this that breaks out of something quieter is the burst of a stop. Fitted, no source: T lasts to
 * 65 ms in the recordings it was fitted to, S out of a closure (as in "six") 70 and more, and /z/ and S out of vowels are not
 * louder than what they come from.
 */
const LONGEST_BURST_SECONDS = 0.07
/** How long before a hiss it is decided whether it breaks out, and by how much, as a ratio of powers. */
const BEFORE_SECONDS = { from: 0.04, to: 0.01 }
const BURST_RATIO = 2
/** How far from a sibilant the vowels next to it are looked for. */
export const NEIGHBOUR_SECONDS = 0.3
/**
 * Jongman et al. (2000): /s/ and /sh/ lie 11 and 10 dB below the vowel, /f/ and /th/ 21 and 22; S. Behrens, S. E.
 * Blumstein, "On the role of the amplitude of the fricative noise", JASA 84(3), 1988: 1 to 8 and 12 to 23. Single S of
 * the recordings lie down to 29 dB below, so level alone does not tell them apart.
 */
const FAINTEST_DB = { always: -30, amongLoud: -20 }
/** F and TH of voices whose F and TH are shaped like S lie at least this far below their typical S. Fitted, no source. */
const BELOW_TYPICAL_DB = 12
/** How the work is divided, roughly: band powers, then what is loud, then the shapes. */
const PARTS = { bands: 0.8, hisses: 0.85 }

/**
 * The sibilants of a voice: spans of at least 30 ms where the band above 3.5 kHz outweighs the rest (100 Hz to 3.5 kHz)
 * and whose spectrum is shaped like that of /s/ or /sh/ (see {@link isSibilantShape}); F, TH and breath are not. Left
 * out are those fainter than the loudest moments of the sound by 40 dB or than the vowels next to them by 30 dB, those
 * fainter than the vowels by 20 dB and than the median of all by 12 dB, and bursts of T shorter than 70 ms. Channels are
 * mixed to one. In order, never overlapping.
 *
 * Limits: a /sh/ with its peak below 3.2 kHz (some men's) is missed, as is most of a /z/ with strong voicing. The hiss
 * of a long T, of "cue" and of a close, hissing breath can pass for a sibilant. In noise louder than 20 dB below an S
 * its shape is no longer seen.
 *
 * Levels compare like the noise levels of Jongman et al. (2000), where /s/ lies 11 dB and /sh/ 10 dB below the
 * vowel on average: root mean square of the sibilant against the vowel at its strongest, here over about 10 ms.
 *
 * @throws MeasureError `sample-rate` below 10.5 kHz, which leaves no band above the split
 */
export function sibilantEvents(sound: Sound): SibilantEvent[] {
  return finished(sibilantEventSteps(sound))
}

/** {@link sibilantEvents} in steps. */
export function* sibilantEventSteps(sound: Sound): Steps<SibilantEvent[]> {
  if (!hasSibilantBand(sound)) {
    throw new MeasureError(
      'sample-rate',
      `sample rate ${sound.sampleRate} Hz (expected at least ${3 * SPLIT_HZ})`,
    )
  }
  const spectra = new ShortSpectra(sound)
  const bands = yield* partOf(bandPowerSteps(spectra, SPLIT_HZ), 0, PARTS.bands)
  const { hopSeconds } = bands
  const { total, hissing } = yield* partOf(hissSteps(bands), PARTS.bands, PARTS.hisses)
  const events: SibilantEvent[] = []
  const spans = joinedSpans(hissing, Math.round(LONGEST_DIP_SECONDS / hopSeconds))
  for (const [index, [from, to]] of spans.entries()) {
    yield PARTS.hisses + (1 - PARTS.hisses) * (index / spans.length)
    if ((to - from) * hopSeconds < SHORTEST_EVENT_SECONDS || isBurst(total, hopSeconds, from, to)) continue
    const levelDb = levelAgainstNeighbours(total, hopSeconds, hissing, from, to)
    if (levelDb !== null && levelDb < FAINTEST_DB.always) continue
    if (!isSibilantShape(hissShape(spectra, from, to))) continue
    events.push({
      startSeconds: Math.max(0, (from - 0.5) * hopSeconds),
      endSeconds: (to - 0.5) * hopSeconds,
      levelDb,
    })
  }
  const faintestDb = Math.min(FAINTEST_DB.amongLoud, typicalLevelDb(events) - BELOW_TYPICAL_DB)
  return events.filter(({ levelDb }) => levelDb === null || levelDb >= faintestDb)
}

/** The sibilants that lie wholly within a range of their take, with times from its start. */
export function sibilantsWithin(
  sibilants: readonly SibilantEvent[],
  { from, to }: FrameRange,
  sampleRate: number,
): SibilantEvent[] {
  const [start, end] = [from / sampleRate, to / sampleRate]
  return sibilants
    .filter(({ startSeconds, endSeconds }) => startSeconds >= start && endSeconds <= end)
    .map((sibilant) => ({
      ...sibilant,
      startSeconds: sibilant.startSeconds - start,
      endSeconds: sibilant.endSeconds - start,
    }))
}

/** Hops that hiss: 1 where the band above outweighs the rest and isn't faint; and the power of both bands. */
interface Hisses {
  readonly total: Float64Array
  readonly hissing: Uint8Array
}

function* hissSteps({ above, below }: BandPowers): Steps<Hisses> {
  const total = above.map((power, i) => power + (below[i] ?? 0))
  yield 0
  const loudIndex = Math.floor(LOUD_PERCENTILE * (total.length - 1))
  const loud = yield* partOf(nthSmallestSteps(total.slice(), loudIndex), 0, 0.5)
  const faint = FAINT_RATIO * (loud ?? 0)
  const hissing = new Uint8Array(total.length)
  for (let from = 0; from < total.length; from += STEP_FRAMES) {
    const to = Math.min(total.length, from + STEP_FRAMES)
    for (let i = from; i < to; i++) {
      const power = above[i] ?? 0
      if (power > faint && power > (below[i] ?? 0)) hissing[i] = 1
    }
    yield 0.5 + 0.5 * (to / total.length)
  }
  return { total, hissing }
}

/** Median of the levels that are known; -Infinity where none is. */
function typicalLevelDb(events: readonly SibilantEvent[]): number {
  const levels = events.flatMap(({ levelDb }) => levelDb ?? []).sort((a, b) => a - b)
  return levels[Math.floor(levels.length / 2)] ?? Number.NEGATIVE_INFINITY
}

/** Whether the sample rate leaves a band above the split. */
export function hasSibilantBand({ sampleRate }: Sound): boolean {
  return sampleRate >= 3 * SPLIT_HZ
}

/** Spans [from, to) of flags that are set, those no more than `dip` apart joined. */
function joinedSpans(flags: Uint8Array, dip: number): [number, number][] {
  const spans: [number, number][] = []
  for (let i = 0; i < flags.length; i++) {
    if (!flags[i]) continue
    const last = spans.at(-1)
    if (last && i - last[1] <= dip) last[1] = i + 1
    else spans.push([i, i + 1])
  }
  return spans
}

/** Whether the hops [from, to) are short and break out of something quieter, such as the closure of a stop. */
function isBurst(total: Float64Array, hopSeconds: number, from: number, to: number): boolean {
  // Rounded, because 14 hops of 5 ms come to a little less than 70 ms.
  const hops = (seconds: number) => Math.round(seconds / hopSeconds)
  if (to - from >= hops(LONGEST_BURST_SECONDS)) return false
  let before = Number.POSITIVE_INFINITY
  for (let i = from - hops(BEFORE_SECONDS.from); i <= from - hops(BEFORE_SECONDS.to); i++) {
    before = Math.min(before, total[i] ?? 0)
  }
  return meanPower(total, from, to) > BURST_RATIO * before
}

function levelAgainstNeighbours(
  total: Float64Array,
  hopSeconds: number,
  hissing: Uint8Array,
  from: number,
  to: number,
): number | null {
  const reach = Math.round(NEIGHBOUR_SECONDS / hopSeconds)
  let vowel = 0
  for (let i = Math.max(0, from - reach); i < Math.min(total.length, to + reach); i++) {
    if (!hissing[i]) vowel = Math.max(vowel, total[i] ?? 0)
  }
  const power = meanPower(total, from, to)
  return vowel > power * 1e-3 ? powerToDb(power / vowel) : null
}

function meanPower(powers: Float64Array, from: number, to: number): number {
  let sum = 0
  for (let i = from; i < to; i++) sum += powers[i] ?? 0
  return sum / (to - from)
}
