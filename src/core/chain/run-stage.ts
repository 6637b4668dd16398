import { frameCount } from '../sound/sound'
import { partOf, type Steps } from '../sound/steps'
import { type StageDoc, stageDefinitions } from '../stages'
import { createProcessor } from '../stages/processors'
import { chainLatencyFrames } from './latency'
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

/**
 * A copy of `sound` that stages can be run on in place, with silence behind it for what they delay.
 * @param memoryFor gives memory of at least so many frames for each of so many channels; null for new memory
 */
export function* workingCopySteps(
  sound: SoundWithLeads,
  delayFrames: number,
  memoryFor: (channelCount: number, frames: number) => readonly Float32Array[] | null = () => null,
): Steps<SoundWithLeads> {
  const { sampleRate, channels, leadInFrames = 0, leadOutFrames = 0 } = sound
  const longer = Math.max(0, delayFrames - leadOutFrames)
  const frames = frameCount(sound) + longer
  const copies = yield* paddedSteps(channels, 0, frames, memoryFor(channels.length, frames) ?? undefined)
  return { sampleRate, channels: copies, leadInFrames, leadOutFrames: leadOutFrames + longer }
}

/**
 * Runs a stage, as if it were on, over the memory of `working`, in steps of one block: yields the share done and
 * returns the same memory, now behind the stage.
 * @param working with at least as many frames behind the take as the stage delays (see {@link workingCopySteps})
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

/**
 * The sound behind those of `stages` that are on, in memory of its own.
 * @param runOutFrames how far behind the take it goes on at least: what stages that are run on it will delay
 */
export function* soundBehindSteps(
  sound: SoundWithLeads,
  stages: readonly StageDoc[],
  runOutFrames = 0,
): Steps<SoundWithLeads> {
  const on = stages.filter((stage) => stage.on)
  const delay = chainLatencyFrames({ stages: on }, sound.sampleRate)
  let working = yield* partOf(workingCopySteps(sound, delay + runOutFrames), 0, 0)
  for (const [k, stage] of on.entries())
    working = (yield* partOf(runStage(working, stage), k / on.length, (k + 1) / on.length)).sound
  return working
}
