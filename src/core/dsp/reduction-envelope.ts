import { type StaticCurve, slopeOfRatio } from './gain-computer'
import { Ramp } from './ramp'
import { timeCoefficient } from './time-constant'

/** What shapes the reduction over time: the static curve, its bound, and how fast it comes and goes. */
export interface ReductionSettings extends StaticCurve {
  /** Most reduction, dB; Infinity for no bound. */
  readonly rangeDb: number
  readonly attackMs: number
  readonly releaseMs: number
}

/** Reduction below this many dB is none: it lets a released stage pass its input bit for bit. */
const NO_REDUCTION_DB = 1e-9

/** Stands in for "no bound", since ramps need a finite number. */
const UNBOUNDED_DB = 1000

const DB_PER_NEPER = 20 / Math.LN10

/**
 * From detected levels to gain reduction: gain computer first, then the smooth branching peak detector on the
 * reduction in dB, `y[n] = a y[n-1] + (1 - a) x[n]`, attack constant while it must grow, release otherwise.
 * Source: D. Giannoulis, M. Massberg, J. D. Reiss, JAES 60(6), 2012, the topology with the detector after the
 * gain computer in the log domain.
 */
export class ReductionEnvelope {
  private readonly threshold: Ramp
  private readonly slope: Ramp
  private readonly knee: Ramp
  private readonly range: Ramp
  private attack = 0
  private release = 0
  private reduction = 0

  constructor(
    settings: ReductionSettings,
    private readonly sampleRate: number,
  ) {
    this.threshold = new Ramp(settings.thresholdDb)
    this.slope = new Ramp(slopeOfRatio(settings.ratio))
    this.knee = new Ramp(settings.kneeDb)
    this.range = new Ramp(Math.min(settings.rangeDb, UNBOUNDED_DB))
    this.set(settings, 0)
  }

  /** Frames until every ramp has arrived; `run` must not be asked for more at once while it is above 0. */
  get rampFramesLeft(): number {
    return Math.max(this.threshold.left, this.slope.left, this.knee.left, this.range.left)
  }

  /** Goes to new settings within `rampFrames`. */
  set(settings: ReductionSettings, rampFrames: number): void {
    this.threshold.goTo(settings.thresholdDb, rampFrames)
    this.slope.goTo(slopeOfRatio(settings.ratio), rampFrames)
    this.knee.goTo(settings.kneeDb, rampFrames)
    this.range.goTo(Math.min(settings.rangeDb, UNBOUNDED_DB), rampFrames)
    this.attack = timeCoefficient(settings.attackMs, this.sampleRate)
    this.release = timeCoefficient(settings.releaseMs, this.sampleRate)
  }

  /** Replaces `frames` linear levels (0 or more) in `levels` by gain reduction in dB (0 or more). */
  run(levels: Float64Array, frames: number): void {
    const { attack, release } = this
    let threshold = this.threshold.now
    let slope = this.slope.now
    let knee = this.knee.now
    let range = this.range.now
    const thresholdStep = this.threshold.perFrame
    const slopeStep = this.slope.perFrame
    const kneeStep = this.knee.perFrame
    const rangeStep = this.range.perFrame
    const ramping = this.rampFramesLeft > 0
    let quietest = 10 ** ((threshold - knee / 2) / 20)
    let reduction = this.reduction
    for (let n = 0; n < frames; n++) {
      if (ramping) {
        threshold += thresholdStep
        slope += slopeStep
        knee += kneeStep
        range += rangeStep
        quietest = 10 ** ((threshold - knee / 2) / 20)
      }
      const level = levels[n] ?? 0
      let wanted = 0
      if (level > quietest) {
        const over = DB_PER_NEPER * Math.log(level) - threshold
        const intoKnee = over + knee / 2
        wanted = intoKnee < knee ? (slope * intoKnee * intoKnee) / (2 * knee) : slope * over
        if (wanted > range) wanted = range
        else if (wanted < 0) wanted = 0
      }
      const coefficient = wanted > reduction ? attack : release
      reduction = wanted + coefficient * (reduction - wanted)
      if (reduction < NO_REDUCTION_DB) reduction = 0
      levels[n] = reduction
    }
    this.reduction = reduction
    this.threshold.advanceTo(threshold, frames)
    this.slope.advanceTo(slope, frames)
    this.knee.advanceTo(knee, frames)
    this.range.advanceTo(range, frames)
  }

  /** Back to no reduction, ramps finished. */
  reset(): void {
    this.reduction = 0
    for (const ramp of [this.threshold, this.slope, this.knee, this.range]) ramp.finish()
  }
}
