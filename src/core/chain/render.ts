import { frameCount, type Sound } from '../sound/sound'
import { finished, partOf, type Steps } from '../sound/steps'
import { stageLatencyFrames } from '../stages/stage-facts'
import type { ChainDoc } from './chain-doc'
import { paddedSteps } from './leads'
import { RUN_FRAMES, runStage } from './run-stage'
import type { Trace } from './trace'

/** A take run through a chain. */
export interface Rendering {
  /** As long as the input and aligned with it, sample for sample. */
  readonly sound: Sound
  /** Gain along the take of each stage that is on and reduces gain, by the stage's id. */
  readonly traces: ReadonlyMap<string, Trace>
  /** Delay of the whole chain that has been taken out again, frames. */
  readonly latencyFrames: number
}

export interface RenderOptions {
  /** Frames processed at a time; the result does not depend on it. */
  readonly blockFrames?: number
}

/**
 * Runs `sound`, with silence before and behind it, through `chain`. The input is not touched.
 * @param chain as `parseChain` returns it
 * @returns sound of the same rate, channels and length, aligned with the input: to the bit what a `ChainProcessor`
 *   puts out, its delay taken out
 */
export function renderChain(sound: Sound, chain: ChainDoc, options: RenderOptions = {}): Rendering {
  return finished(renderSteps(sound, chain, options))
}

/**
 * {@link renderChain} in steps of one block, for hosts that show progress or may have to stop: yields the share
 * done (0 to 1) after each and returns the rendering. Abandon it at any step.
 */
export function* renderSteps(
  sound: Sound,
  { stages }: ChainDoc,
  { blockFrames = RUN_FRAMES }: RenderOptions = {},
): Steps<Rendering> {
  const { sampleRate } = sound
  const frames = frameCount(sound)
  const delays = stages.map((stage) => stageLatencyFrames(stage, sampleRate))
  const latencyFrames = sum(delays)
  const traces = new Map<string, Trace>()
  // A stage that is off delays as it does live, so that what dies away is flushed at the same frames. The silence it
  // puts in front is there from the start, and nothing need be moved.
  let from = sum(delays.filter((_, k) => !stages[k]?.on))
  let leadInFrames = 0
  const working = yield* partOf(paddedSteps(sound.channels, from, frames + latencyFrames), 0, 0)
  for (const [k, stage] of stages.entries()) {
    const delay = delays[k] ?? 0
    if (stage.on) {
      const channels = startingAt(from, working)
      const leadOutFrames = (channels[0]?.length ?? 0) - leadInFrames - frames
      const steps = runStage({ sampleRate, channels, leadInFrames, leadOutFrames }, stage, blockFrames)
      const { trace } = yield* partOf(steps, k / stages.length, (k + 1) / stages.length)
      if (trace) traces.set(stage.id, trace)
    } else {
      from -= delay
    }
    leadInFrames += delay
  }
  const channels = yield* partOf(paddedSteps(startingAt(latencyFrames, working), 0, frames), 1, 1)
  return { sound: { sampleRate, channels }, traces, latencyFrames }
}

/** Views of `channels` from frame `from` on. */
function startingAt(from: number, channels: readonly Float32Array[]): Float32Array[] {
  return channels.map((samples) => samples.subarray(from))
}

function sum(frames: readonly number[]): number {
  return frames.reduce((total, count) => total + count, 0)
}
