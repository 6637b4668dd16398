import { type Biquad, IDENTITY } from './biquad'
import { SILENCE_SQUARED } from './direct-form'
import { type StateVariable, stateVariableOf } from './state-variable'

/** A corner that moves further than this, as a ratio, would carry what rings there along as a chirp. */
const FAR = 2

/** A gain at one end of the spectrum below this takes that end out. */
const TAKEN_OUT = 0.1

/**
 * One section on its way to another: corner and damping by equal ratios, the three gains by equal steps. On the
 * way each of the three parts of the input weighs no more than at the heavier end, so nothing bulges or rings up.
 *
 * The way has two halves. A section whose corner goes far first fades out where it is and then fades in where it
 * goes, with the input in between; unless both ends take out the same part of the input, which must stay out.
 */
export class MovingSection implements StateVariable {
  g = 1
  k = 2
  high = 1
  band = 1
  low = 1
  private target = stateVariableOf(IDENTITY)
  private fadesOut = false
  private gRatio = 1
  private kRatio = 1
  private highStep = 0
  private bandStep = 0
  private lowStep = 0

  /** Whether the output is the input, now and to the end of the ramp. */
  get changesNothing(): boolean {
    return isNeutral(this) && isNeutral(this.target)
  }

  /** Sets out for `section`: {@link turn} after `toMiddle` frames, {@link arrive} after the rest. */
  goTo(section: Biquad, toMiddle: number, frames: number): void {
    const target = stateVariableOf(section)
    // Where all gains are 1, corner and damping are of no effect: take over those of the other end and stay there.
    if (isNeutral(this)) {
      this.g = target.g
      this.k = target.k
    }
    this.target = isNeutral(target) ? { ...target, g: this.g, k: this.k } : target
    this.fadesOut = isFar(this, this.target) && !takeOutTheSame(this, this.target)
    if (this.fadesOut) this.setOut({ g: this.g, k: this.k, ...NEUTRAL }, toMiddle)
    else this.setOut(this.target, frames)
  }

  /**
   * Half-way.
   * @returns whether the section has faded out here, so that its state must be cleared
   */
  turn(framesLeft: number): boolean {
    if (!this.fadesOut) return false
    const { g, k } = this.target
    this.stand({ g, k, ...NEUTRAL })
    this.setOut(this.target, framesLeft)
    return true
  }

  /** Filters `count` values of `buffer` in place while moving, with the state at `at`; moves on by {@link advance}. */
  run(buffer: Float64Array, state: Float64Array, at: number, count: number): void {
    const { gRatio, kRatio, highStep, bandStep, lowStep } = this
    let { g, k, high, band, low } = this
    let s1 = state[at] ?? 0
    let s2 = state[at + 1] ?? 0
    for (let n = 0; n < count; n++) {
      g *= gRatio
      k *= kRatio
      high += highStep
      band += bandStep
      low += lowStep
      const x = buffer[n] ?? 0
      const scale = 1 / (1 + g * (g + k))
      const rest = x - s2
      const bandPassed = scale * (s1 + g * rest)
      const lowPassed = s2 + g * bandPassed
      s1 = 2 * bandPassed - s1
      s2 = 2 * lowPassed - s2
      if (s1 * s1 + s2 * s2 < SILENCE_SQUARED) s1 = s2 = 0
      buffer[n] = high * x + k * (band - high) * bandPassed + (low - high) * lowPassed
    }
    state[at] = s1
    state[at + 1] = s2
  }

  /** Moves on by `count` frames, frame by frame as {@link run} does, so that block cuts leave the same bits. */
  advance(count: number): void {
    for (let n = 0; n < count; n++) {
      this.g *= this.gRatio
      this.k *= this.kRatio
      this.high += this.highStep
      this.band += this.bandStep
      this.low += this.lowStep
    }
  }

  /** Stands at the target. */
  arrive(): void {
    this.stand(this.target)
  }

  private stand({ g, k, high, band, low }: StateVariable): void {
    this.g = g
    this.k = k
    this.high = high
    this.band = band
    this.low = low
  }

  private setOut(to: StateVariable, frames: number): void {
    if (frames === 0) return
    this.gRatio = (to.g / this.g) ** (1 / frames)
    this.kRatio = (to.k / this.k) ** (1 / frames)
    this.highStep = (to.high - this.high) / frames
    this.bandStep = (to.band - this.band) / frames
    this.lowStep = (to.low - this.low) / frames
  }
}

/** The gains of a section that changes nothing. */
const NEUTRAL = { high: 1, band: 1, low: 1 }

function isNeutral({ high, band, low }: StateVariable): boolean {
  return high === 1 && band === 1 && low === 1
}

function isFar(a: StateVariable, b: StateVariable): boolean {
  return a.g > FAR * b.g || b.g > FAR * a.g
}

function takeOutTheSame(a: StateVariable, b: StateVariable): boolean {
  return (a.low < TAKEN_OUT && b.low < TAKEN_OUT) || (a.high < TAKEN_OUT && b.high < TAKEN_OUT)
}
