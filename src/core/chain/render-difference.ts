import { frameCount, type Sound } from '../sound/sound'
import type { StageDoc } from '../stages'
import { createReference } from '../stages/processors'
import type { ChainDoc } from './chain-doc'
import { padded, type SoundWithLeads } from './leads'
import { renderChain } from './render'
import { runInPlace } from './run-in-place'

/**
 * Only what one stage takes away: the sound before it, as the stage passes it when it finds nothing to do, less
 * the sound behind it. Aligned with the input; digital silence where the stage does nothing or is off.
 * @throws RangeError when the chain has no stage `stageId`
 */
export function renderDifference(sound: Sound, chain: ChainDoc, stageId: string): Sound {
  const index = chain.stages.findIndex(({ id }) => id === stageId)
  const stage = chain.stages[index]
  if (!stage) throw new RangeError(`no stage "${stageId}" in the chain`)
  const upToStage = { ...chain, stages: chain.stages.slice(0, index + 1) }
  const { sound: after, kept } = renderChain(sound, upToStage, { keep: true })
  const before = kept?.taps[index - 1]?.withLeads ?? sound
  const reference = stage.on ? passedThrough(before, stage, frameCount(sound)) : after.channels
  return {
    sampleRate: sound.sampleRate,
    channels: reference.map((samples, c) => samples.map((value, n) => value - (after.channels[c]?.[n] ?? 0))),
  }
}

/** `frames` of `sound`, from frame 0 on, as the stage passes them when it finds nothing to do. */
function passedThrough(sound: SoundWithLeads, stage: StageDoc, frames: number): Float32Array[] {
  const host = { sampleRate: sound.sampleRate, channelCount: sound.channels.length, staticSettings: true }
  const reference = createReference(stage, host)
  const leadInFrames = (sound.leadInFrames ?? 0) + reference.latencyFrames
  const working = padded(sound.channels, 0, leadInFrames + frames)
  for (const _ of runInPlace(reference, working, leadInFrames + frames));
  return working.map((samples) => samples.subarray(leadInFrames))
}
