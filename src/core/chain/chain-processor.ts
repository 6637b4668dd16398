import { DelayLine } from '../dsp/delay-line'
import { Ramp } from '../dsp/ramp'
import { framesOf } from '../dsp/time-constant'
import { type SettingsByKind, type StageDoc, type StageKind, stageDefinitions } from '../stages'
import { createProcessor } from '../stages/create-processor'
import type { Processor, ProcessorHost } from '../stages/stage-definition'
import type { ChainDoc } from './chain-doc'
import { contain } from './contain'

/** The most frames {@link ChainProcessor.process} takes at once. */
export const MAX_BLOCK_FRAMES = 2048

/** A stage switched on or off is faded in or out along a straight line: both sides are correlated. */
const SWITCH_MS = 15

/**
 * A chain at work on sound that streams: the same stages as a render, each of which can be switched and set while
 * the sound runs. Every stage runs all the time, so that one switched on is warm; its delay is the same on or
 * off. `process` and `set` are made for the audio thread: they allocate nothing and never throw.
 */
export class ChainProcessor {
  /** Frames by which the output lags the input. */
  readonly latencyFrames: number
  private readonly slots: readonly StageSlot[]
  private readonly signature: string

  constructor(chain: ChainDoc, host: ProcessorHost) {
    this.slots = chain.stages.map((stage) => createSlot(stage, host))
    this.latencyFrames = this.slots.reduce((sum, { latencyFrames }) => sum + latencyFrames, 0)
    this.signature = signatureOf(chain)
  }

  /** Number of stages. */
  get length(): number {
    return this.slots.length
  }

  /** Whether `chain` has the stages this was made for, in their order. */
  fits(chain: ChainDoc): boolean {
    return signatureOf(chain) === this.signature
  }

  /**
   * Goes smoothly to the switches and settings of `chain`.
   * @returns false, with nothing done, when the chain has other stages than this one was made for
   */
  set(chain: ChainDoc): boolean {
    if (!this.fits(chain)) return false
    for (let k = 0; k < this.slots.length; k++) {
      const stage = chain.stages[k]
      if (stage) this.slots[k]?.set(stage)
    }
    return true
  }

  /**
   * Processes the first `frames` (at most {@link MAX_BLOCK_FRAMES}) of every channel in place.
   * @param lowestGainDb where given, the gain of each stage is written to it if lower than what stands there
   */
  process(channels: readonly Float32Array[], frames: number, lowestGainDb?: Float32Array): void {
    for (let k = 0; k < this.slots.length; k++) {
      const gain = this.slots[k]?.process(channels, frames) ?? 0
      if (lowestGainDb && gain < (lowestGainDb[k] ?? 0)) lowestGainDb[k] = gain
    }
  }
}

/** Kinds in order, by id: what a processor is made for and cannot change. */
function signatureOf(chain: ChainDoc): string {
  return chain.stages.map(({ id, kind }) => `${kind} ${id}`).join('\n')
}

interface StageSlot {
  readonly latencyFrames: number
  set(stage: StageDoc): void
  process(channels: readonly Float32Array[], frames: number): number
}

function createSlot<Kind extends StageKind>(stage: StageDoc<Kind>, host: ProcessorHost): StageSlot {
  const processor = createProcessor(stage, host)
  const adopt = (next: StageDoc) => {
    if (isOfKind(next, stage.kind)) processor.set(next.settings)
  }
  return new SwitchedSlot(processor, adopt, stageDefinitions[stage.kind].reducesGain, stage.on, host)
}

interface Settled<Kind extends StageKind> {
  readonly kind: Kind
  readonly settings: SettingsByKind[Kind]
}

function isOfKind<Kind extends StageKind>(
  stage: { readonly kind: StageKind; readonly settings: unknown },
  kind: Kind,
): stage is Settled<Kind> {
  return stage.kind === kind
}

/** One stage beside its delayed input, and the fade between the two. */
class SwitchedSlot implements StageSlot {
  readonly latencyFrames: number
  private readonly dry: readonly Float32Array[]
  private readonly delays: readonly DelayLine[]
  private readonly gainDb: Float32Array | undefined
  private readonly wetShare: Ramp
  private readonly switchFrames: number
  private settings: unknown = null

  constructor(
    private readonly processor: Pick<Processor<never>, 'process' | 'latencyFrames'>,
    private readonly adopt: (stage: StageDoc) => void,
    reducesGain: boolean,
    private on: boolean,
    { channelCount, sampleRate }: ProcessorHost,
  ) {
    this.latencyFrames = processor.latencyFrames
    this.dry = Array.from({ length: channelCount }, () => new Float32Array(MAX_BLOCK_FRAMES))
    this.delays = Array.from({ length: channelCount }, () => new DelayLine(processor.latencyFrames))
    this.gainDb = reducesGain ? new Float32Array(MAX_BLOCK_FRAMES) : undefined
    this.wetShare = new Ramp(on ? 1 : 0)
    this.switchFrames = framesOf(SWITCH_MS, sampleRate)
  }

  set(stage: StageDoc): void {
    if (stage.on !== this.on) this.wetShare.goTo(stage.on ? 1 : 0, this.switchFrames)
    if (stage.settings !== this.settings) this.adopt(stage)
    this.on = stage.on
    this.settings = stage.settings
  }

  process(channels: readonly Float32Array[], frames: number): number {
    const share = this.wetShare
    const heard = share.left > 0 || share.now < 1
    // Not heard now, but the delay must hold what comes, for when it is.
    if (heard || this.latencyFrames > 0) this.keepDry(channels, frames)
    this.processor.process(channels, frames, this.gainDb)
    contain(channels, frames)
    if (heard) this.blend(channels, frames)
    return this.on ? this.lowestGain(frames) : 0
  }

  private keepDry(channels: readonly Float32Array[], frames: number): void {
    for (let c = 0; c < channels.length; c++) {
      const samples = channels[c]
      const dry = this.dry[c]
      if (!samples || !dry) continue
      for (let n = 0; n < frames; n++) dry[n] = samples[n] ?? 0
      this.delays[c]?.process(dry, 0, frames)
    }
  }

  private blend(channels: readonly Float32Array[], frames: number): void {
    const share = this.wetShare
    const start = share.now
    const step = share.perFrame
    const moving = Math.min(share.left, frames)
    share.advanceBy(moving)
    const settled = share.now
    for (let c = 0; c < channels.length; c++) {
      const samples = channels[c]
      const dry = this.dry[c]
      if (!samples || !dry) continue
      let wet = start
      for (let n = 0; n < moving; n++) {
        wet += step
        const before = dry[n] ?? 0
        samples[n] = before + wet * ((samples[n] ?? 0) - before)
      }
      if (settled === 0) for (let n = moving; n < frames; n++) samples[n] = dry[n] ?? 0
    }
  }

  private lowestGain(frames: number): number {
    const { gainDb } = this
    let lowest = 0
    if (gainDb) for (let n = 0; n < frames; n++) lowest = Math.min(lowest, gainDb[n] ?? 0)
    return lowest
  }
}
