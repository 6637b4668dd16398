import { frameCount } from '../sound/sound'
import { finished, type Steps } from '../sound/steps'
import { type StageDoc, stageDefinitions } from '../stages'
import { createProcessor } from '../stages/processors'
import { paddedSteps, type SoundWithLeads, takeFrames } from './leads'
import { runInPlace } from './run-in-place'
import { type Trace, TraceBuilder } from './trace'

/** Frames processed at a time: well below a millisecond for most stages, some for a saturator. */
export const RUN_FRAMES = 8192

/** What a stage put out. */
export interface BehindStage {
  readonly sound: SoundWithLeads
  /** Null for stages that do not reduce gain. */
  readonly trace: Trace | null
}

/** A copy of `sound` that stages can be run on in place, with silence behind it for what they delay. */
export function workingCopy(sound: SoundWithLeads, delayFrames: number): SoundWithLeads {
  return finished(workingCopySteps(sound, delayFrames))
}

/** {@link workingCopy} in steps. */
export function* workingCopySteps(sound: SoundWithLeads, delayFrames: number): Steps<SoundWithLeads> {
  const { sampleRate, channels, leadInFrames = 0, leadOutFrames = 0 } = sound
  const longer = Math.max(0, delayFrames - leadOutFrames)
  const copies = yield* paddedSteps(channels, 0, frameCount(sound) + longer)
  return { sampleRate, channels: copies, leadInFrames, leadOutFrames: leadOutFrames + longer }
}

/**
 * Runs a stage, as if it were on, over the memory of `working`, in steps of one block: yields the share done and
 * returns the same memory, now behind the stage.
 * @param working with at least as many frames behind the take as the stage delays (see {@link workingCopy})
 */
export function* runStage(
  working: SoundWithLeads,
  stage: StageDoc,
  blockFrames = RUN_FRAMES,
): Generator<number, BehindStage, void> {
  const { sampleRate, channels, leadInFrames = 0, leadOutFrames = 0 } = working
  const frames = takeFrames(working)
  const processor = createProcessor(stage, {
    sampleRate,
    channelCount: channels.length,
    staticSettings: true,
  })
  const { latencyFrames } = processor
  const builder = stageDefinitions[stage.kind].reducesGain
    ? new TraceBuilder(frames, -leadInFrames - latencyFrames)
    : undefined
  yield* runInPlace(processor, channels, blockFrames, builder)
  const sound = {
    sampleRate,
    channels,
    leadInFrames: leadInFrames + latencyFrames,
    leadOutFrames: leadOutFrames - latencyFrames,
  }
  return { sound, trace: builder?.trace ?? null }
}
