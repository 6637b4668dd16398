import { frameCount, type Sound } from '../sound/sound'
import { finished } from '../sound/steps'
import type { StageDoc } from '../stages'
import { createIdleProcessor } from '../stages/processors'
import { stageLatencyFrames } from '../stages/stage-facts'
import type { ChainDoc } from './chain-doc'
import { padded, type SoundWithLeads } from './leads'
import { runInPlace } from './run-in-place'
import { runStage, workingCopy } from './run-stage'

/**
 * What one stage changes: the sound before it, as the stage passes it when it finds nothing to do, less the sound
 * after it. Aligned with the input; digital silence where the stage does nothing or is off.
 * @throws RangeError when the chain has no stage `stageId`
 */
export function renderDifference(sound: Sound, chain: ChainDoc, stageId: string): Sound {
  const index = chain.stages.findIndex(({ id }) => id === stageId)
  const stage = chain.stages[index]
  if (!stage) throw new RangeError(`no stage "${stageId}" in the chain`)
  const { sampleRate } = sound
  const frames = frameCount(sound)
  if (!stage.on) return { sampleRate, channels: sound.channels.map(() => new Float32Array(frames)) }
  const upToStage = chain.stages.slice(0, index + 1).filter(({ on }) => on)
  const delay = upToStage.reduce((total, each) => total + stageLatencyFrames(each, sampleRate), 0)
  let working = workingCopy(sound, delay)
  for (const earlier of upToStage.slice(0, -1)) working = finished(runStage(working, earlier)).sound
  const reference = passedIdle(working, stage, frames)
  const after = finished(runStage(working, stage)).sound
  const behind = after.channels.map((samples) => samples.subarray(after.leadInFrames ?? 0))
  return {
    sampleRate,
    channels: reference.map((samples, c) => samples.map((value, n) => value - (behind[c]?.[n] ?? 0))),
  }
}

/** `frames` of `sound`, from frame 0 on, as the stage passes them when it finds nothing to do. */
function passedIdle(sound: SoundWithLeads, stage: StageDoc, frames: number): Float32Array[] {
  const host = { sampleRate: sound.sampleRate, channelCount: sound.channels.length, staticSettings: true }
  const idle = createIdleProcessor(stage, host)
  const leadInFrames = (sound.leadInFrames ?? 0) + idle.latencyFrames
  const working = padded(sound.channels, 0, leadInFrames + frames)
  for (const _ of runInPlace(idle, working, leadInFrames + frames));
  return working.map((samples) => samples.subarray(leadInFrames))
}
