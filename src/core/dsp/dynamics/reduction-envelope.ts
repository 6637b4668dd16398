import { dbToGain } from '../../sound/decibels'
import { fastLog } from '../numeric/fast-log'
import { type StaticCurve, slopeOfRatio } from './gain-computer'
import { timeCoefficient } from './time-constant'

/** What shapes the reduction over time: the static curve, its bound, and how fast it comes and goes. */
export interface ReductionSettings extends StaticCurve {
  /** Most reduction, dB; none for no bound. */
  readonly rangeDb?: number
  readonly attackMs: number
  readonly releaseMs: number
}

/** How long the loudest level stays in mind, ms: longer than a period of the lowest note. */
const MEMORY_MS = 30

/** Reduction below this many dB is none: it lets a released stage pass its input bit for bit. */
const NO_REDUCTION_DB = 1e-9

const DB_PER_NEPER = 20 / Math.LN10

/**
 * From detected levels to gain reduction: gain computer first, then the smooth branching peak detector on the
 * reduction in dB, `y[n] = a y[n-1] + (1 - a) x[n]`, attack constant while it must grow, release otherwise.
 * Source: D. Giannoulis, M. Massberg, J. D. Reiss, JAES 60(6), 2012, the topology with the detector after the
 * gain computer in the log domain.
 */
export class ReductionEnvelope {
  private thresholdDb = 0
  private slope = 0
  private kneeDb = 0
  /** Of the parabola within the knee; 0 for a hard one, so that rounding at its very corner makes no infinity. */
  private bend = 0
  private rangeDb = 0
  private attack = 0
  private release = 0
  /** Linear level from which on there is something to hold back. */
  private quietest = 1
  private reduction = 0
  private loudest = 0
  private readonly forgetting: number

  /** @param remembersLevels whether {@link loudestLevel} will be asked for */
  constructor(
    private readonly sampleRate: number,
    private readonly remembersLevels = true,
  ) {
    this.forgetting = timeCoefficient(MEMORY_MS, sampleRate)
  }

  /** The loudest recent level, linear. */
  get loudestLevel(): number {
    return this.loudest
  }

  /** Gain reduction now, dB, 0 or more. */
  get reductionDb(): number {
    return this.reduction
  }

  /** Uses new settings from the next frame on, starting from a reduction and the loudest recent level. */
  take(settings: ReductionSettings, reductionDb = 0, loudestLevel = 0): void {
    const { thresholdDb, ratio, kneeDb, rangeDb, attackMs, releaseMs } = settings
    this.thresholdDb = thresholdDb
    this.slope = slopeOfRatio(ratio)
    this.kneeDb = kneeDb
    this.bend = kneeDb > 0 ? this.slope / (2 * kneeDb) : 0
    this.rangeDb = rangeDb ?? Number.POSITIVE_INFINITY
    this.attack = timeCoefficient(attackMs, this.sampleRate)
    this.release = timeCoefficient(releaseMs, this.sampleRate)
    this.quietest = dbToGain(thresholdDb - kneeDb / 2)
    this.reduction = reductionDb
    this.loudest = loudestLevel
  }

  /**
   * Writes the gain reduction (dB, 0 or more) at the first `frames` of `levels` (linear) to `reductions`.
   * @returns whether any of it is more than 0
   */
  run(levels: Float64Array, frames: number, reductions: Float64Array): boolean {
    if (this.holdsNothingBack(levels, frames)) return this.letGo(levels, frames, reductions)
    const { thresholdDb, slope, kneeDb, bend, rangeDb, attack, release, quietest, forgetting } = this
    let { reduction, loudest } = this
    for (let n = 0; n < frames; n++) {
      const level = levels[n] ?? 0
      loudest *= forgetting
      if (level > loudest) loudest = level
      if (level > quietest) {
        const over = DB_PER_NEPER * fastLog(level) - thresholdDb
        const intoKnee = over + kneeDb / 2
        let wanted = intoKnee < kneeDb ? bend * intoKnee * intoKnee : slope * over
        if (wanted > rangeDb) wanted = rangeDb
        else if (wanted < 0) wanted = 0
        const coefficient = wanted > reduction ? attack : release
        reduction = wanted + coefficient * (reduction - wanted)
      } else {
        reduction *= release
      }
      if (reduction < NO_REDUCTION_DB) reduction = 0
      reductions[n] = reduction
    }
    this.reduction = reduction
    this.loudest = loudest
    return true
  }

  /** Back to no reduction. */
  reset(): void {
    this.reduction = 0
    this.loudest = 0
  }

  private holdsNothingBack(levels: Float64Array, frames: number): boolean {
    const { quietest } = this
    for (let n = 0; n < frames; n++) if ((levels[n] ?? 0) > quietest) return false
    return true
  }

  /** What `run` does where there is nothing to hold back: mostly the case in a de-esser, and a fraction of the work. */
  private letGo(levels: Float64Array, frames: number, reductions: Float64Array): boolean {
    const { release } = this
    if (this.remembersLevels) this.remember(levels, frames)
    if (this.reduction === 0) {
      for (let n = 0; n < frames; n++) reductions[n] = 0
      return false
    }
    let { reduction } = this
    for (let n = 0; n < frames; n++) {
      reduction *= release
      if (reduction < NO_REDUCTION_DB) reduction = 0
      reductions[n] = reduction
    }
    this.reduction = reduction
    return true
  }

  private remember(levels: Float64Array, frames: number): void {
    const { forgetting } = this
    let { loudest } = this
    for (let n = 0; n < frames; n++) {
      const level = levels[n] ?? 0
      loudest *= forgetting
      if (level > loudest) loudest = level
    }
    this.loudest = loudest
  }
}
