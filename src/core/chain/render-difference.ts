import { frameCount, type Sound } from '../sound/sound'
import { finished } from '../sound/steps'
import type { StageDoc } from '../stages'
import { createIdleProcessor } from '../stages/processors'
import { stageLatencyFrames } from '../stages/stage-facts'
import type { ChainDoc } from './chain-doc'
import { alignedSound, padded, type SoundWithLeads } from './leads'
import { runInPlace } from './run-in-place'
import { runStage, soundBehindSteps } from './run-stage'

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
  const runOut = stageLatencyFrames(stage, sampleRate)
  const working = finished(soundBehindSteps(sound, chain.stages.slice(0, index), runOut))
  const reference = passedIdle(working, stage, frames)
  const behind = alignedSound(finished(runStage(working, stage)).sound).channels
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
