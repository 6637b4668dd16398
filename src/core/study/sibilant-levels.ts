import type { DetectorLevel } from '../chain/detector-level'
import { SILENT_DBFS } from '../chain/detector-level'
import { NEIGHBOUR_SECONDS, type SibilantEvent } from '../measure/sibilance/sibilance'
import { hopPowerSteps } from '../measure/sibilance/sibilance-level'
import type { Sound } from '../sound/sound'
import { finished, type Steps } from '../sound/steps'

/** One sibilant as a detector sees it, and the vowel next to it. */
export interface SibilantLevel {
  readonly startSeconds: number
  readonly endSeconds: number
  /** The highest level within the sibilant, dBFS. */
  readonly levelDbfs: number
  /** The level of the strongest vowel within 0.3 s on either side, dBFS; null where there is none. */
  readonly vowelDbfs: number | null
}

/** At either end of a sibilant: as much as its ends are unsure by, hops. */
const EDGE_HOPS = 2

/**
 * What a detector sees of each sibilant and of the vowel next to it. A vowel is found by the power of the whole sound,
 * where it stands out, and its level read from the detector: the burst of a T nearby, which a detector above a crossover
 * sees louder than any vowel, is not taken for one.
 * @param level of the same sound
 */
export function sibilantLevels(
  sound: Sound,
  level: DetectorLevel,
  sibilants: readonly SibilantEvent[],
): SibilantLevel[] {
  return finished(sibilantLevelSteps(sound, level, sibilants))
}

/** {@link sibilantLevels} in steps. */
export function* sibilantLevelSteps(
  sound: Sound,
  { hopFrames, levelDbfs }: DetectorLevel,
  sibilants: readonly SibilantEvent[],
): Steps<SibilantLevel[]> {
  if (sibilants.length === 0) return []
  const hopSeconds = hopFrames / sound.sampleRate
  const powers = yield* hopPowerSteps(sound)
  const spans = sibilants.map(({ startSeconds, endSeconds }) => ({
    from: Math.max(0, Math.floor(startSeconds / hopSeconds)),
    to: Math.min(levelDbfs.length, Math.ceil(endSeconds / hopSeconds)),
  }))
  const hissing = new Uint8Array(levelDbfs.length)
  for (const { from, to } of spans) hissing.fill(1, Math.max(0, from - EDGE_HOPS), to + EDGE_HOPS)
  const reach = Math.round(NEIGHBOUR_SECONDS / hopSeconds)
  return sibilants.map(({ startSeconds, endSeconds }, k) => {
    const { from, to } = spans[k] ?? { from: 0, to: 0 }
    let highest = SILENT_DBFS
    for (let hop = from; hop < to; hop++) highest = Math.max(highest, levelDbfs[hop] ?? SILENT_DBFS)
    let vowel = -1
    for (let hop = Math.max(0, from - reach); hop < Math.min(powers.length, to + reach); hop++)
      if (hissing[hop] === 0 && (powers[hop] ?? 0) > (powers[vowel] ?? 0)) vowel = hop
    return { startSeconds, endSeconds, levelDbfs: highest, vowelDbfs: levelDbfs[vowel] ?? null }
  })
}
