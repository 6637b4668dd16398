import { gainToDb } from '../../sound/decibels'
import { CrossFade } from '../fades/cross-fade'
import { reductionDb } from './gain-computer'
import { ReductionEnvelope, type ReductionSettings } from './reduction-envelope'
import { mixGains } from './reduction-gain'

/** Linear gains of the signal without gain reduction (dry) and with it (wet). */
export interface Paths {
  readonly dry: number
  readonly wet: number
}

/**
 * A reduction envelope and, while its settings change, the one before it, side by side, for what they make of the
 * sound to be faded. The new envelope starts from the old one's reduction, scaled as the static curve is at the
 * loudest recent level: otherwise it would take a whole attack to get to where it would have been all along.
 */
export class FadingReduction<Settings extends ReductionSettings> {
  readonly fade: CrossFade<Settings>
  private envelope: ReductionEnvelope
  private earlier: ReductionEnvelope

  /** @param raises whether the sound is made louder after the reduction by going from one to the other */
  constructor(
    settings: Settings,
    sampleRate: number,
    fadeFrames: number,
    private readonly raises: (from: Settings, to: Settings) => boolean = () => false,
  ) {
    // Only what is faded to starts from what it would hold back by now.
    const remembersLevels = fadeFrames > 0
    this.envelope = new ReductionEnvelope(sampleRate, remembersLevels)
    this.earlier = new ReductionEnvelope(sampleRate, remembersLevels)
    this.envelope.take(settings)
    this.fade = new CrossFade(settings, fadeFrames, (coming) => this.takeOver(coming))
  }

  /** Goes to new settings, at once before the first frame, faded after it; the last asked for wins. */
  set(settings: Settings): void {
    this.fade.goTo(settings)
  }

  /**
   * Writes the reduction at the first `count` of `levels`, no more than the fade has left, to `reductions`, and
   * while there is a fade that by the settings before to `earlier`. {@link CrossFade.pass} is left to the caller.
   * @returns false where all that it wrote is 0
   */
  run(levels: Float64Array, count: number, reductions: Float64Array, earlier: Float64Array): boolean {
    const reducedBefore = this.fade.framesLeft > 0 && this.earlier.run(levels, count, earlier)
    return this.envelope.run(levels, count, reductions) || reducedBefore
  }

  /**
   * Mixes, by {@link mixGains}, the gains of what {@link run} wrote, and while there is a fade fades them from those of
   * the settings before; of these, `earlier` is used up.
   * @param pathsOf how the gains are mixed by which settings; must not allocate
   */
  mix(
    reductions: Float64Array,
    earlier: Float64Array,
    count: number,
    pathsOf: (settings: Settings) => Paths,
    mixed: Float64Array,
  ): void {
    const { fade } = this
    const { dry, wet } = pathsOf(fade.coming)
    mixGains(reductions, count, dry, wet, mixed)
    if (fade.framesLeft === 0) return
    const standing = pathsOf(fade.standing)
    mixGains(earlier, count, standing.dry, standing.wet, earlier)
    for (let n = 0; n < count; n++) {
      const before = earlier[n] ?? 0
      mixed[n] = before + fade.share(n) * ((mixed[n] ?? 0) - before)
    }
  }

  /** Back to no reduction, any fade finished. */
  reset(): void {
    this.fade.reset()
    this.envelope.reset()
    this.earlier.reset()
  }

  private takeOver(coming: Settings): void {
    const { envelope } = this
    this.envelope = this.earlier
    this.earlier = envelope
    this.envelope.take(coming, this.startDb(envelope, this.fade.standing, coming), envelope.loudestLevel)
  }

  private startDb(
    { reductionDb: heldDb, loudestLevel }: ReductionEnvelope,
    from: Settings,
    to: Settings,
  ): number {
    if (loudestLevel === 0) return heldDb
    const levelDb = gainToDb(loudestLevel)
    const before = boundedReductionDb(levelDb, from)
    const after = boundedReductionDb(levelDb, to)
    const most = Math.max(heldDb, after)
    const otherTimes = from.attackMs !== to.attackMs || from.releaseMs !== to.releaseMs
    // How much slower times hold is not known here. Where the sound is raised as well, rather too much than a burst.
    if (before === 0 || (otherTimes && this.raises(from, to))) return most
    return Math.min(most, (heldDb * after) / before)
  }
}

function boundedReductionDb(levelDb: number, settings: ReductionSettings): number {
  return Math.min(reductionDb(levelDb, settings), settings.rangeDb ?? Number.POSITIVE_INFINITY)
}
