import { framesOf, SETTING_FADE_MS } from '../dsp/dynamics/time-constant'
import { copyFrames } from '../dsp/fades/copy-frames'
import { smoothStep } from '../dsp/fades/cross-fade'
import { DelayLine } from '../dsp/fades/delay-line'
import { Ramp } from '../dsp/fades/ramp'
import { type SettingsByKind, type StageDoc, type StageKind, stageDefinitions } from '../stages'
import type { Processor, ProcessorHost } from '../stages/processor'
import { createIdleProcessor, createProcessor } from '../stages/processors'
import { filtersWhenIdle } from '../stages/stage-facts'
import { contain } from './contain'
import { LargestReduction } from './largest-reduction'

/** The most frames a slot takes at once. */
export const MAX_BLOCK_FRAMES = 2048

/** Where a chain runs, and what it is asked for. */
export interface ChainHost extends ProcessorHost {
  /** Whether the difference will be asked for: stages that filter when idle then run that too. */
  readonly differenceToo?: boolean
}

/** One running stage of a chain, with its switch. */
export interface StageSlot {
  readonly latencyFrames: number
  set(stage: StageDoc): void
  /** Fades to adding what this stage changes to the difference, or to adding nothing. */
  watch(on: boolean): void
  /**
   * Processes the first `frames` of every channel in place.
   * @param difference delayed as the sound is, and added to while the stage is watched
   * @returns the lowest gain, dB
   */
  process(channels: readonly Float32Array[], frames: number, difference?: readonly Float32Array[]): number
}

/** A slot for `stage`. Allocates. */
export function createSlot<Kind extends StageKind>(stage: StageDoc<Kind>, host: ChainHost): StageSlot {
  const { reducesGain } = stageDefinitions[stage.kind]
  const processor = createProcessor(stage, host)
  const idle = host.differenceToo && filtersWhenIdle(stage.kind) ? createIdleProcessor(stage, host) : null
  const adopt = (next: StageDoc) => {
    if (!isOfKind(next, stage.kind)) return
    processor.set(next.settings)
    idle?.set(next.settings)
  }
  return new SwitchedSlot({ processor, idle, adopt, reducesGain }, stage.on, host)
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

type Runner = Pick<Processor<never>, 'process' | 'latencyFrames'>

interface SlotParts {
  readonly processor: Runner
  /** What the stage passes when it finds nothing to do, where that is not its input delayed. */
  readonly idle: Runner | null
  readonly reducesGain: boolean
  adopt(stage: StageDoc): void
}

/** One stage beside its delayed input, and the fade between the two, by shares that add up to 1: both correlate. */
class SwitchedSlot implements StageSlot {
  readonly latencyFrames: number
  private readonly dry: readonly Float32Array[]
  private readonly passed: readonly Float32Array[]
  private readonly dryDelays: readonly DelayLine[]
  private readonly differenceDelays: readonly DelayLine[]
  private readonly reductions: LargestReduction | undefined
  private readonly wetMix: Ramp
  private readonly watchedMix = new Ramp(0)
  private readonly switchFrames: number
  private settings: unknown = null

  constructor(
    private readonly parts: SlotParts,
    private on: boolean,
    { channelCount, sampleRate, differenceToo }: ChainHost,
  ) {
    const { processor, idle, reducesGain } = parts
    const { latencyFrames } = processor
    const delays = (count: number) => Array.from({ length: count }, () => new DelayLine(latencyFrames))
    this.latencyFrames = latencyFrames
    this.dry = blocks(channelCount)
    this.passed = idle ? blocks(channelCount) : this.dry
    this.dryDelays = delays(channelCount)
    this.differenceDelays = delays(differenceToo ? channelCount : 0)
    this.reductions = reducesGain ? new LargestReduction() : undefined
    this.wetMix = new Ramp(on ? 1 : 0)
    this.switchFrames = framesOf(SETTING_FADE_MS, sampleRate)
  }

  set(stage: StageDoc): void {
    if (stage.on !== this.on) this.wetMix.goTo(stage.on ? 1 : 0, this.switchFrames)
    if (stage.settings !== this.settings) this.parts.adopt(stage)
    this.on = stage.on
    this.settings = stage.settings
  }

  watch(on: boolean): void {
    this.watchedMix.goTo(on ? 1 : 0, this.switchFrames)
  }

  process(channels: readonly Float32Array[], frames: number, difference?: readonly Float32Array[]): number {
    const { wetMix, watchedMix, parts } = this
    const heard = wetMix.left > 0 || wetMix.now < 1
    const watched = watchedMix.left > 0 || watchedMix.now > 0
    if (parts.idle) {
      // Runs whether watched or not, so that it holds the very same past as the stage.
      copy(channels, this.passed, frames)
      parts.idle.process(this.passed, frames)
    }
    // Where it is not heard now, the delay must hold what comes, for when it is.
    if (heard || watched || this.latencyFrames > 0) this.keepDry(channels, frames)
    parts.processor.process(channels, frames, this.reductions)
    contain(channels, frames)
    if (difference) {
      delay(difference, this.differenceDelays, frames)
      if (watched) this.addDifference(difference, channels, frames)
    }
    watchedMix.pass(frames)
    if (heard) this.blend(channels, frames)
    const largestDb = this.reductions?.take() ?? 0
    return this.on ? -largestDb : 0
  }

  private keepDry(channels: readonly Float32Array[], frames: number): void {
    copy(channels, this.dry, frames)
    delay(this.dry, this.dryDelays, frames)
  }

  /** Adds what the stage changed, by as much as it is switched on. */
  private addDifference(
    difference: readonly Float32Array[],
    wet: readonly Float32Array[],
    frames: number,
  ): void {
    const { wetMix, watchedMix } = this
    for (let c = 0; c < difference.length; c++) {
      const target = difference[c]
      const passed = this.passed[c]
      const samples = wet[c]
      if (!target || !passed || !samples) continue
      for (let n = 0; n < frames; n++) {
        const taken = (passed[n] ?? 0) - (samples[n] ?? 0)
        target[n] = (target[n] ?? 0) + smoothStep(watchedMix.at(n)) * smoothStep(wetMix.at(n)) * taken
      }
    }
  }

  private blend(channels: readonly Float32Array[], frames: number): void {
    const share = this.wetMix
    const moving = Math.min(share.left, frames)
    for (let c = 0; c < channels.length; c++) {
      const samples = channels[c]
      const dry = this.dry[c]
      if (!samples || !dry) continue
      for (let n = 0; n < moving; n++) {
        const before = dry[n] ?? 0
        samples[n] = before + smoothStep(share.at(n)) * ((samples[n] ?? 0) - before)
      }
      if (share.at(moving) === 0) for (let n = moving; n < frames; n++) samples[n] = dry[n] ?? 0
    }
    share.pass(frames)
  }
}

function blocks(channelCount: number): Float32Array[] {
  return Array.from({ length: channelCount }, () => new Float32Array(MAX_BLOCK_FRAMES))
}

function copy(from: readonly Float32Array[], to: readonly Float32Array[], frames: number): void {
  for (let c = 0; c < from.length; c++) {
    const source = from[c]
    const target = to[c]
    if (source && target) copyFrames(source, 0, target, 0, frames)
  }
}

function delay(channels: readonly Float32Array[], lines: readonly DelayLine[], frames: number): void {
  for (let c = 0; c < channels.length; c++) {
    const samples = channels[c]
    if (samples) lines[c]?.process(samples, 0, frames)
  }
}
