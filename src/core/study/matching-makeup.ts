import type { ChainDoc } from '../chain/chain-doc'
import { alignedSound } from '../chain/leads'
import { soundBehindSteps } from '../chain/run-stage'
import { integratedLoudnessSteps } from '../measure/loudness/loudness'
import type { Sound } from '../sound/sound'
import { finished, partOf, type Steps } from '../sound/steps'
import type { StageDoc, StageKind } from '../stages'
import { type MakeupOf, makeupOf, stageLatencyFrames } from '../stages/stage-facts'

/** Within this the makeup counts as found, LU: a tenth of what a comparison is matched to. */
const CLOSE_LU = 0.01

/** A dB of makeup is taken to do at least this much, so that no try leaps. */
const LEAST_EFFECT = 0.05

/** With all of the mix compressed one try finds it; with less of it, few are needed. */
const MOST_TRIES = 12

/** How the loudness on either side of the stage is found: integrated, LUFS, or null where not measurable. */
export interface MakeupTools {
  before(): Steps<number | null>
  behind(stage: StageDoc): Steps<number | null>
}

/**
 * The makeup gain, dB, with which a stage's output is as loud (integrated, ITU-R BS.1770) as its input: found
 * by measuring both, and again until they match where the mix leaves part of the sound dry. Kept inside the range
 * of the parameter. Null where the sound is silent or too short to measure, or makeup acts on none of it (mix 0).
 */
export function* matchingMakeupSteps(
  makeup: MakeupOf<StageKind>,
  { before, behind }: MakeupTools,
): Steps<number | null> {
  const parts = MOST_TRIES + 1
  const wanted = yield* partOf(before(), 0, 1 / parts)
  if (wanted === null || makeup.share === 0) return null
  const { min, max } = makeup.parameter
  let makeupDb = 0
  let last: { makeupDb: number; missing: number } | null = null
  for (let tried = 1; tried <= MOST_TRIES; tried++) {
    const loudness = behind(makeup.with(makeupDb))
    const found = yield* partOf(loudness, tried / parts, (tried + 1) / parts)
    if (found === null) return null
    const missing: number = wanted - found
    if (Math.abs(missing) < CLOSE_LU) break
    // How much louder 1 dB makes it: all of that where nothing stays dry, else as it was seen to.
    const seen: number = last ? (last.missing - missing) / (makeupDb - last.makeupDb) : makeup.share
    last = { makeupDb, missing }
    const next: number = Math.min(max, Math.max(min, makeupDb + missing / Math.max(seen, LEAST_EFFECT)))
    if (next === makeupDb) break
    makeupDb = next
  }
  return makeupDb
}

/**
 * {@link matchingMakeupSteps} of one stage of a chain, in one go.
 * @throws RangeError when the chain has no stage `stageId` with makeup gain
 */
export function matchingMakeupDb(sound: Sound, chain: ChainDoc, stageId: string): number | null {
  const index = chain.stages.findIndex(({ id }) => id === stageId)
  const stage = chain.stages[index]
  const makeup = stage && makeupOf(stage)
  if (!makeup) throw new RangeError(`no stage "${stageId}" with makeup gain in the chain`)
  const runOut = stageLatencyFrames(stage, sound.sampleRate)
  const before = finished(soundBehindSteps(sound, chain.stages.slice(0, index), runOut))
  return finished(
    matchingMakeupSteps(makeup, {
      before: () => integratedLoudnessSteps(alignedSound(before)),
      *behind(tried) {
        return yield* integratedLoudnessSteps(alignedSound(yield* soundBehindSteps(before, [tried])))
      },
    }),
  )
}
