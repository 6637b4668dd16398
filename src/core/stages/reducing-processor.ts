import type { FadingReduction, Paths } from '../dsp/dynamics/fading-reduction'
import type { ReductionSettings } from '../dsp/dynamics/reduction-envelope'
import { upToEnd } from '../dsp/fades/cross-fade'
import { CHUNK_FRAMES, type LevelReader, type ReductionReader } from './processor'

/**
 * What stages that reduce gain have in common: chunk by chunk a level is detected, its gain reduction computed, reported
 * to the reader, and applied where the sound is needed. Each kind says how.
 */
export abstract class ReducingProcessor<Settings extends ReductionSettings> {
  /** Whether a frame has gone by: what is set before the first one holds at once. */
  protected started = false
  private readonly levels = new Float64Array(CHUNK_FRAMES)
  private readonly reductions = new Float64Array(CHUNK_FRAMES)
  private readonly earlierReductions = new Float64Array(CHUNK_FRAMES)
  private readonly mixed = new Float64Array(CHUNK_FRAMES)

  /** @param pathsOf how the gain is mixed by which settings; must not allocate */
  protected constructor(
    protected readonly reduction: FadingReduction<Settings>,
    private readonly pathsOf: (settings: Settings) => Paths,
  ) {}

  process(channels: readonly Float32Array[], frames: number, reader?: ReductionReader): void {
    this.run(channels, frames, reader, true)
  }

  trace(channels: readonly Float32Array[], frames: number, reader: ReductionReader): void {
    this.run(channels, frames, reader, false)
  }

  readLevels(channels: readonly Float32Array[], frames: number, reader: LevelReader): void {
    this.started = true
    const { levels } = this
    let from = 0
    while (from < frames) {
      const count = upToEnd(Math.min(CHUNK_FRAMES, frames - from), this.detectorFramesLeft)
      this.prepare(channels, from, count)
      this.detect(channels, from, count, levels)
      reader.read(levels, count)
      from += count
    }
  }

  reset(): void {
    this.reduction.reset()
    this.started = false
  }

  /** Frames that {@link detect} may be asked for at most, while above 0. */
  protected abstract get detectorFramesLeft(): number

  /** Prepares `count` frames of `channels`, from frame `from` on, for `detect` and `apply`. */
  protected abstract prepare(channels: readonly Float32Array[], from: number, count: number): void

  /** Writes the linear level of these frames to `levels`. */
  protected abstract detect(
    channels: readonly Float32Array[],
    from: number,
    count: number,
    levels: Float64Array,
  ): void

  /**
   * Applies to these frames the gains in `mixed`, of paths as they were said to be mixed.
   * @param reduces false where none of them reduces anything
   */
  protected abstract apply(
    channels: readonly Float32Array[],
    from: number,
    count: number,
    mixed: Float64Array,
    reduces: boolean,
  ): void

  private run(
    channels: readonly Float32Array[],
    frames: number,
    reader: ReductionReader | undefined,
    isHeard: boolean,
  ): void {
    this.started = true
    const { reduction, levels, reductions, earlierReductions, mixed } = this
    let from = 0
    while (from < frames) {
      const chunk = Math.min(CHUNK_FRAMES, frames - from)
      const count = upToEnd(upToEnd(chunk, this.detectorFramesLeft), reduction.fade.framesLeft)
      this.prepare(channels, from, count)
      this.detect(channels, from, count, levels)
      const reduces = reduction.run(levels, count, reductions, earlierReductions)
      reader?.read(reductions, count)
      if (isHeard) reduction.mix(reductions, earlierReductions, count, this.pathsOf, mixed)
      reduction.fade.pass(count)
      if (isHeard) this.apply(channels, from, count, mixed, reduces)
      from += count
    }
  }
}
