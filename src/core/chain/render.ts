import { frameCount, type Sound } from '../sound'
import { type StageDoc, stageDefinitions } from '../stages'
import { createProcessor, createReference } from '../stages/create-processor'
import type { Processor } from '../stages/stage-definition'
import type { ChainDoc } from './chain-doc'
import { contain } from './contain'
import { sameStage } from './same-sound'
import { type Trace, TraceBuilder } from './trace'

/** What came out of one stage, kept so that a change further on need not run it again. */
export interface Tap {
  readonly stage: StageDoc
  /** Aligned with the input; longer than it by what later stages delay. */
  readonly channels: readonly Float32Array[]
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
 * Runs `sound` through `chain`. The input is not touched.
 * @param chain as `parseChain` returns it
 * @returns sound of the same rate, channels and length, aligned with the input
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
  const host = { sampleRate: sound.sampleRate, channelCount: sound.channels.length, settingsStay: true }
  const processors = chain.stages.map((stage) => createProcessor(stage, host))
  const latencyFrames = processors.reduce((sum, { latencyFrames }) => sum + latencyFrames, 0)
  const reusable = reusableTaps(previous, sound, chain, frames + latencyFrames, processors)
  const taps: Tap[] = keep ? [...reusable] : []
  const traces = new Map<string, Trace>()
  for (const { stage } of reusable) {
    const trace = previous?.traces.get(stage.id)
    if (trace) traces.set(stage.id, trace)
  }

  let working = extended(
    reusable.at(-1)?.channels ?? sound.channels,
    frames + latencyAfter(processors, reusable.length - 1),
  )
  let kept = false
  for (let k = reusable.length; k < chain.stages.length; k++) {
    const stage = chain.stages[k]
    const processor = processors[k]
    if (!stage || !processor) break
    if (stage.on) {
      const trace = stageDefinitions[stage.kind].reducesGain ? new TraceBuilder(frames) : null
      if (kept) working = working.map((samples) => samples.slice())
      for (const done of processInPlace(processor, working, blockFrames, trace)) {
        yield (k + done) / chain.stages.length
      }
      if (trace) traces.set(stage.id, trace)
      working = shortened(working, processor.latencyFrames, 0)
    } else {
      working = shortened(working, 0, processor.latencyFrames)
    }
    if (keep) taps.push({ stage, channels: working })
    kept = keep
  }
  const output = {
    sampleRate: sound.sampleRate,
    channels: working.map((samples) => samples.slice(0, frames)),
  }
  return { sound: output, traces, latencyFrames, kept: keep ? { source: sound, taps } : null }
}

/**
 * Only what one stage takes away: the sound before it, as the stage passes it when it finds nothing to do, less
 * the sound behind it. Aligned with the input; digital silence where the stage does nothing or is off.
 * @throws RangeError when the chain has no stage `stageId`
 */
export function renderRemoved(sound: Sound, chain: ChainDoc, stageId: string): Sound {
  const index = chain.stages.findIndex(({ id }) => id === stageId)
  const stage = chain.stages[index]
  if (!stage) throw new RangeError(`no stage "${stageId}" in the chain`)
  const before = renderChain(sound, { ...chain, stages: chain.stages.slice(0, index) }).sound
  const after = renderChain(before, { ...chain, stages: [stage] }).sound
  const reference = stage.on ? passedThrough(before, stage) : before
  return {
    sampleRate: sound.sampleRate,
    channels: reference.channels.map((samples, c) =>
      samples.map((value, n) => value - (after.channels[c]?.[n] ?? 0)),
    ),
  }
}

function passedThrough(sound: Sound, stage: StageDoc): Sound {
  const frames = frameCount(sound)
  const host = { sampleRate: sound.sampleRate, channelCount: sound.channels.length, settingsStay: true }
  const reference = createReference(stage, host)
  const working = extended(sound.channels, frames + reference.latencyFrames)
  for (const _ of processInPlace(reference, working, BLOCK_FRAMES, null));
  return { ...sound, channels: working.map((samples) => samples.slice(reference.latencyFrames)) }
}

function* processInPlace(
  processor: Pick<Processor<never>, 'process' | 'latencyFrames'>,
  channels: readonly Float32Array[],
  blockFrames: number,
  trace: TraceBuilder | null,
): Generator<number, void, void> {
  const total = channels[0]?.length ?? 0
  const gainDb = trace ? new Float32Array(Math.min(blockFrames, total)) : undefined
  for (let from = 0; from < total; from += blockFrames) {
    const count = Math.min(blockFrames, total - from)
    const block = channels.map((samples) => samples.subarray(from, from + count))
    processor.process(block, count, gainDb)
    contain(block, count)
    if (trace && gainDb) trace.add(gainDb, from - processor.latencyFrames, count)
    yield (from + count) / total
  }
}

/** Copies of `channels`, cut or filled up with silence to `frames`. */
function extended(channels: readonly Float32Array[], frames: number): Float32Array[] {
  return channels.map((samples) => {
    const copy = new Float32Array(frames)
    copy.set(samples.length > frames ? samples.subarray(0, frames) : samples)
    return copy
  })
}

/** Views of `channels` without so many frames at either end; the same arrays where there is nothing to cut. */
function shortened(channels: Float32Array[], fromStart: number, fromEnd: number): Float32Array[] {
  if (fromStart + fromEnd === 0) return channels
  return channels.map((samples) => samples.subarray(fromStart, samples.length - fromEnd))
}

/** Frames by which the stages behind number `index` delay. */
function latencyAfter(processors: readonly { readonly latencyFrames: number }[], index: number): number {
  return processors.slice(index + 1).reduce((sum, { latencyFrames }) => sum + latencyFrames, 0)
}

/** The taps of `previous` that hold for this chain: same source, same stages so far, long enough for what follows. */
function reusableTaps(
  previous: Rendering | undefined,
  source: Sound,
  chain: ChainDoc,
  paddedFrames: number,
  processors: readonly { readonly latencyFrames: number }[],
): readonly Tap[] {
  const kept = previous?.kept
  if (!kept || kept.source !== source) return []
  const changed = chain.stages.findIndex((stage, k) => !sameStage(stage, kept.taps[k]?.stage))
  const same = kept.taps.slice(0, changed < 0 ? chain.stages.length : changed)
  const delayedBefore = latencyAfter(processors, -1) - latencyAfter(processors, same.length - 1)
  const long = (same.at(-1)?.channels[0]?.length ?? 0) >= paddedFrames - delayedBefore
  return long ? same : []
}
