import type { ChainDoc } from './chain-doc'
import { type ChainHost, createSlot, type StageSlot } from './stage-slot'

/**
 * A chain running on sound that streams: the same stages as a render, each of which can be switched and set while
 * the sound runs. Every stage runs all the time, so that one switched on is warm; its delay is the same on or
 * off. `process`, `set` and `watch` are made for the audio thread: they never throw, and `process` allocates
 * nothing.
 */
export class ChainProcessor {
  /** Frames by which the output lags the input. */
  readonly latencyFrames: number
  private readonly slots: readonly StageSlot[]
  private readonly ids: readonly string[]
  private readonly signature: string

  constructor(chain: ChainDoc, host: ChainHost) {
    this.slots = chain.stages.map((stage) => createSlot(stage, host))
    this.ids = chain.stages.map(({ id }) => id)
    this.latencyFrames = this.slots.reduce((sum, { latencyFrames }) => sum + latencyFrames, 0)
    this.signature = signatureOf(chain)
  }

  /** Number of stages. */
  get length(): number {
    return this.slots.length
  }

  /** Whether `chain` has the stages that this was made for, in the same order. */
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
   * Fades to putting out what this stage changes as `difference`; null, or a stage that the chain does not have:
   * nothing. Needs a host that asks for the difference too.
   */
  watch(stageId: string | null): void {
    for (let k = 0; k < this.slots.length; k++) this.slots[k]?.watch(this.ids[k] === stageId)
  }

  /**
   * Processes the first `frames` (at most {@link MAX_BLOCK_FRAMES}) of every channel in place.
   * @param lowestGainDb where given, the gain of each stage is written to it if lower than what stands there
   * @param difference where given, overwritten with what the watched stage changes, aligned with the output: what it
   *   passes when idle, less what it put out, as `renderDifference` has it. Give it with every block or with none
   */
  process(
    channels: readonly Float32Array[],
    frames: number,
    lowestGainDb?: Float32Array,
    difference?: readonly Float32Array[],
  ): void {
    if (difference) for (let c = 0; c < difference.length; c++) difference[c]?.fill(0, 0, frames)
    for (let k = 0; k < this.slots.length; k++) {
      const gain = this.slots[k]?.process(channels, frames, difference) ?? 0
      if (lowestGainDb && gain < (lowestGainDb[k] ?? 0)) lowestGainDb[k] = gain
    }
  }
}

/** Kinds and ids in order: what a processor is made for and cannot change. */
function signatureOf(chain: ChainDoc): string {
  return chain.stages.map(({ id, kind }) => `${kind} ${id}`).join('\n')
}
