import { type Biquad, IDENTITY } from './biquad'
import { DIRECT_STRIDE, prepareSection, runSection, runTwoSections } from './direct-form'
import { MovingSection } from './moving-section'
import { toDirectForm, toStateVariable } from './state-variable'

/** Frames worked on at a time, small enough to stay in the processor's nearest cache. */
const CHUNK_FRAMES = 128

/**
 * Second-order sections in series, the same for every channel, with 64-bit state. Sections that stand still run in
 * transposed direct form II, which costs least. On their way to new ones they run as state-variable filters, along
 * a path on which none rings more than at either end; what they hold of the past is carried over both times.
 */
export class BiquadCascade {
  private readonly scratch = new Float64Array(CHUNK_FRAMES)
  private readonly sections: readonly MovingSection[]
  /** Where the sections stand, or are going. */
  private readonly targets: Biquad[]
  /** The same in the form in which sections that stand still are run. */
  private readonly coefficients: Float64Array
  private readonly states: readonly Float64Array[]
  /** Frames of the second half of a ramp. */
  private readonly behindMiddle: number
  private rampFramesLeft = 0
  private started = false
  /** Sections up to the last that was ever given; those behind it have never changed anything. */
  private usedSections = 0

  /**
   * @param maxSections the most sections `set` will be given; missing ones change nothing.
   * @param channelCount channels that `process` will be given.
   * @param rampFrames frames it takes to reach new sections.
   */
  constructor(
    maxSections: number,
    channelCount: number,
    private readonly rampFrames: number,
  ) {
    this.behindMiddle = Math.ceil(rampFrames / 2)
    this.sections = Array.from({ length: maxSections }, () => new MovingSection())
    this.targets = Array.from({ length: maxSections }, () => IDENTITY)
    this.coefficients = new Float64Array(maxSections * DIRECT_STRIDE)
    this.states = Array.from({ length: channelCount }, () => new Float64Array(maxSections * 2))
  }

  /** Goes to new sections, at once before the first frame and along a ramp after it. */
  set(sections: readonly Biquad[]): void {
    if (this.started && this.rampFramesLeft === 0) this.loosen()
    this.usedSections = Math.max(this.usedSections, sections.length)
    this.rampFramesLeft = this.started ? this.rampFrames : 0
    for (let k = 0; k < this.usedSections; k++) {
      const target = sections[k] ?? IDENTITY
      this.targets[k] = target
      this.sections[k]?.goTo(target, this.rampFramesLeft - this.behindMiddle, this.rampFramesLeft)
    }
    if (this.rampFramesLeft === 0) this.arrive()
  }

  /** Filters `frames` of every channel in place, from frame `start` on. */
  process(channels: readonly Float32Array[], frames: number, start = 0): void {
    this.started = true
    const end = start + frames
    let from = start
    while (from < end) {
      const left = this.rampFramesLeft
      const leg = left > this.behindMiddle ? left - this.behindMiddle : left
      const count = Math.min(CHUNK_FRAMES, end - from, left > 0 ? leg : CHUNK_FRAMES)
      for (let c = 0; c < channels.length; c++) {
        const samples = channels[c]
        const state = this.states[c]
        if (samples && state) this.processChunk(samples, state, from, count)
      }
      if (left > 0) this.advance(count)
      from += count
    }
  }

  /** Forgets all past input and finishes any ramp. */
  reset(): void {
    for (const state of this.states) state.fill(0)
    this.rampFramesLeft = 0
    this.arrive()
    this.started = false
  }

  private processChunk(samples: Float32Array, state: Float64Array, from: number, count: number): void {
    const { scratch, coefficients, sections } = this
    const ramping = this.rampFramesLeft > 0
    let touched = false
    let waiting = -1
    for (let k = 0; k < this.usedSections; k++) {
      const section = sections[k]
      if (!section || section.changesNothing) continue
      if (!touched) {
        for (let n = 0; n < count; n++) scratch[n] = samples[from + n] ?? 0
        touched = true
      }
      if (ramping) {
        section.run(scratch, state, 2 * k, count)
      } else if (waiting < 0) {
        waiting = k
      } else {
        runTwoSections(scratch, coefficients, waiting, k, state, count)
        waiting = -1
      }
    }
    if (waiting >= 0) runSection(scratch, coefficients, waiting, state, count)
    if (!touched) return
    for (let n = 0; n < count; n++) samples[from + n] = scratch[n] ?? 0
  }

  private advance(count: number): void {
    this.rampFramesLeft -= count
    if (this.rampFramesLeft === 0) {
      this.arrive()
      return
    }
    const turning = this.rampFramesLeft === this.behindMiddle
    for (let k = 0; k < this.usedSections; k++) {
      const section = this.sections[k]
      section?.advance(count)
      if (turning && section?.turn(this.behindMiddle)) this.silence(k)
    }
  }

  /** Sections that stood still are about to move: their state takes the form for that. */
  private loosen(): void {
    for (let k = 0; k < this.usedSections; k++) {
      const section = this.sections[k]
      const standing = this.targets[k]
      if (!section || !standing) continue
      for (const state of this.states) toStateVariable(state, 2 * k, standing, section)
    }
  }

  /** Ends all ramps: sections stand still again. */
  private arrive(): void {
    for (let k = 0; k < this.usedSections; k++) {
      const section = this.sections[k]
      const target = this.targets[k]
      if (!section || !target) continue
      section.arrive()
      prepareSection(this.coefficients, k, target)
      for (const state of this.states) toDirectForm(state, 2 * k, target, section)
      if (section.changesNothing) this.silence(k)
    }
  }

  /** A section that changes nothing shows nothing of its state; when it comes back, it starts from silence. */
  private silence(k: number): void {
    for (const state of this.states) state.fill(0, 2 * k, 2 * k + 2)
  }
}
