import { frameCount, type Sound } from '../sound/sound'
import { type StageDoc, stageDefinitions } from '../stages'
import { createProcessor } from '../stages/processors'
import type { ChainDoc } from './chain-doc'
import { padded, type SoundWithLeads } from './leads'
import { runInPlace } from './run-in-place'
import { sameStage } from './same-sound'
import { type Trace, TraceBuilder } from './trace'

/** What came out of one stage, kept so that a change further on need not run it again. */
export interface Tap {
  readonly stage: StageDoc
  /** Aligned with the input; longer than it by what later stages delay. The same memory behind a stage that is off. */
  readonly channels: readonly Float32Array[]
  /** The same with what the stage put out ahead of the input's first frame: what later stages hear. */
  readonly withLeads: SoundWithLeads
}

/** A take run through a chain. */
export interface Rendering {
  /** As long as the input and aligned with it, sample for sample. */
  readonly sound: Sound
  /** Gain along the take of each stage that is on and reduces gain, by the stage's id. */
  readonly traces: ReadonlyMap<string, Trace>
  /** Delay of the whole chain that has been taken out again, frames. */
  readonly latencyFrames: number
  /** What the render was made from and each stage put out; empty unless asked for with `keep`. */
  readonly kept: { readonly source: Sound; readonly taps: readonly Tap[] } | null
}

export interface RenderOptions {
  /** Frames processed at a time; the result does not depend on it. */
  readonly blockFrames?: number
  /** Keep each stage's output in the rendering, for `previous`. */
  readonly keep?: boolean
  /** An earlier rendering made with `keep`: stages up to the first changed one are taken from it. */
  readonly previous?: Rendering
}

const BLOCK_FRAMES = 8192

/**
 * Runs `sound`, with silence before and behind it, through `chain`. The input is not touched.
 * @param chain as `parseChain` returns it
 * @returns sound of the same rate, channels and length, aligned with the input: to the bit what a `ChainProcessor`
 *   puts out, its delay taken out
 */
export function renderChain(sound: Sound, chain: ChainDoc, options: RenderOptions = {}): Rendering {
  const steps = renderSteps(sound, chain, options)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

/**
 * {@link renderChain} in steps of one block, for hosts that show progress or may have to stop: yields the share
 * done (0 to 1) after each and returns the rendering. Abandon it at any step.
 */
export function* renderSteps(
  sound: Sound,
  chain: ChainDoc,
  { blockFrames = BLOCK_FRAMES, keep = false, previous }: RenderOptions = {},
): Generator<number, Rendering, void> {
  const frames = frameCount(sound)
  const host = { sampleRate: sound.sampleRate, channelCount: sound.channels.length, staticSettings: true }
  const processors = chain.stages.map((stage) => createProcessor(stage, host))
  const latencyFrames = latencyOf(processors)
  const reusable = reusableTaps(previous, sound, chain, processors)
  const taps: Tap[] = keep ? [...reusable] : []
  const traces = new Map<string, Trace>()
  for (const { stage } of reusable) {
    const trace = previous?.traces.get(stage.id)
    if (trace) traces.set(stage.id, trace)
  }

  const start: SoundWithLeads = reusable.at(-1)?.withLeads ?? sound
  let leadInFrames = start.leadInFrames ?? 0
  const stillToRun = processors.slice(reusable.length)
  // A stage that is off delays as it does live, so that what dies away is flushed at the same frames. The silence it
  // puts in front is there from the start, and nothing need be moved.
  let from = latencyOf(stillToRun.filter((_, k) => !chain.stages[reusable.length + k]?.on))
  let working = padded(start.channels, from, leadInFrames + frames + latencyOf(stillToRun))
  let kept = false
  for (let k = reusable.length; k < chain.stages.length; k++) {
    const stage = chain.stages[k]
    const processor = processors[k]
    if (!stage || !processor) break
    leadInFrames += processor.latencyFrames
    if (stage.on) {
      const builder = stageDefinitions[stage.kind].reducesGain
        ? new TraceBuilder(frames, -leadInFrames)
        : undefined
      if (kept) working = working.map((samples) => samples.slice())
      for (const done of runInPlace(processor, startingAt(from, working), blockFrames, builder)) {
        yield (k + done) / chain.stages.length
      }
      if (builder) traces.set(stage.id, builder.trace)
    } else {
      from -= processor.latencyFrames
    }
    if (keep) {
      const channels = startingAt(from, working)
      const leadOutFrames = (channels[0]?.length ?? 0) - leadInFrames - frames
      const withLeads = { sampleRate: sound.sampleRate, channels, leadInFrames, leadOutFrames }
      const unchanged = stage.on ? undefined : taps.at(-1)?.channels
      taps.push({ stage, channels: unchanged ?? startingAt(leadInFrames, channels), withLeads })
    }
    kept = keep
  }
  const output = {
    sampleRate: sound.sampleRate,
    channels: working.map((samples) => samples.slice(latencyFrames, latencyFrames + frames)),
  }
  return { sound: output, traces, latencyFrames, kept: keep ? { source: sound, taps } : null }
}

/** Views of `channels` from frame `from` on. */
function startingAt(from: number, channels: readonly Float32Array[]): Float32Array[] {
  return channels.map((samples) => samples.subarray(from))
}

/** Frames by which processors in series delay. */
function latencyOf(processors: readonly { readonly latencyFrames: number }[]): number {
  return processors.reduce((sum, { latencyFrames }) => sum + latencyFrames, 0)
}

/** The taps of `previous` that hold for this chain: same source, same stages so far, long enough for what follows. */
function reusableTaps(
  previous: Rendering | undefined,
  source: Sound,
  chain: ChainDoc,
  processors: readonly { readonly latencyFrames: number }[],
): readonly Tap[] {
  const kept = previous?.kept
  if (!kept || kept.source !== source) return []
  const changed = chain.stages.findIndex((stage, k) => !sameStage(stage, kept.taps[k]?.stage))
  const same = kept.taps.slice(0, changed < 0 ? chain.stages.length : changed)
  const needed = frameCount(source) + latencyOf(processors.slice(same.length))
  return (same.at(-1)?.channels[0]?.length ?? 0) >= needed ? same : []
}
