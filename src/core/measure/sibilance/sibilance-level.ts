import { highPass } from '../../dsp/filters/bilinear'
import { BiquadCascade } from '../../dsp/filters/biquad-cascade'
import { powerToDb } from '../../sound/decibels'
import { mixToMono } from '../../sound/mono'
import { frameCount, type Sound } from '../../sound/sound'
import { finished, STEP_FRAMES, type Steps } from '../../sound/steps'
import { NEIGHBOUR_SECONDS, type SibilantEvent } from './sibilance'

const HOP_SECONDS = 0.005
/** What lies lower is rumble, not voice. */
const LOWEST_HZ = 100
/** At either end of a sibilant: as much as its ends are unsure by. The shortest are 6 hops long. */
const EDGE_HOPS = 2
/** A vowel this far below a sibilant is none: 30 dB. */
const FAINTEST_VOWEL = 1e-3

/**
 * How loud the sibilants of a voice are against the vowels next to them, dB: root mean square of each sibilant against
 * the strongest 10 ms within 0.3 s on either side that belong to none, as in `sibilantEvents`; the median of all.
 *
 * A processed take is to be measured at the sibilants of the take it was made from: with its sibilants reduced, it would have fewer of its own.
 *
 * @returns null where there are none, or none with a vowel near
 */
export function sibilanceDb(sound: Sound, sibilants: readonly SibilantEvent[]): number | null {
  return finished(sibilanceSteps(sound, sibilants))
}

/** {@link sibilanceDb} in steps. */
export function* sibilanceSteps(sound: Sound, sibilants: readonly SibilantEvent[]): Steps<number | null> {
  if (sibilants.length === 0) return null
  const powers = yield* hopPowerSteps(sound)
  const spans = sibilants.map(({ startSeconds, endSeconds }) => ({
    from: Math.max(0, Math.floor(startSeconds / HOP_SECONDS)),
    to: Math.min(powers.length, Math.ceil(endSeconds / HOP_SECONDS)),
  }))
  const hissing = new Uint8Array(powers.length)
  for (const { from, to } of spans) hissing.fill(1, from, to)
  const levels = spans.flatMap(({ from, to }) => levelDb(powers, hissing, from, to) ?? [])
  levels.sort((a, b) => a - b)
  return levels[Math.floor(levels.length / 2)] ?? null
}

/** Mean square of each 5 ms of all channels mixed to one. */
export function* hopPowerSteps(sound: Sound): Steps<Float64Array> {
  const filter = new BiquadCascade(1, 1, 0)
  filter.set([highPass(LOWEST_HZ, Math.SQRT1_2, sound.sampleRate)])
  const length = Math.round(HOP_SECONDS * sound.sampleRate)
  const powers = new Float64Array(Math.floor(frameCount(sound) / length))
  const hopsInStep = Math.max(1, Math.floor(STEP_FRAMES / length))
  const mix = new Float32Array(hopsInStep * length)
  for (let from = 0; from < powers.length; from += hopsInStep) {
    const hops = Math.min(hopsInStep, powers.length - from)
    mixToMono(sound, from * length, mix)
    filter.process([mix], hops * length)
    for (let i = 0; i < hops; i++) powers[from + i] = meanSquare(mix, i * length, length)
    yield (from + hops) / powers.length
  }
  return powers
}

function meanSquare(samples: Float32Array, from: number, count: number): number {
  let squares = 0
  for (let n = from; n < from + count; n++) {
    const sample = samples[n] ?? 0
    squares += sample * sample
  }
  return squares / count
}

function levelDb(powers: Float64Array, hissing: Uint8Array, from: number, to: number): number | null {
  const hops = to - from - 2 * EDGE_HOPS
  if (hops <= 0) return null
  const reach = Math.round(NEIGHBOUR_SECONDS / HOP_SECONDS)
  let vowel = 0
  for (let i = Math.max(0, from - reach); i + 1 < Math.min(powers.length, to + reach); i++) {
    const isClear = hissing[i] === 0 && hissing[i + 1] === 0
    if (isClear) vowel = Math.max(vowel, ((powers[i] ?? 0) + (powers[i + 1] ?? 0)) / 2)
  }
  // Without its first and last moments, which it shares with the vowels.
  let power = 0
  for (let i = from + EDGE_HOPS; i < to - EDGE_HOPS; i++) power += (powers[i] ?? 0) / hops
  return power > 0 && vowel > power * FAINTEST_VOWEL ? powerToDb(power / vowel) : null
}
