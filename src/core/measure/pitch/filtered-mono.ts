import { highPass } from '../../dsp/filters/bilinear'
import { BiquadCascade } from '../../dsp/filters/biquad-cascade'
import { mixToMono } from '../../sound/mono'
import { frameCount, type Sound } from '../../sound/sound'

/** Frames mixed and filtered at a time, about. */
const CHUNK_FRAMES = 8192

/**
 * A sound mixed to one channel, without what lies below a frequency (Butterworth, 12 dB per octave), read in stretches
 * of one length from its start on. Holds no more than it needs: a whole mix would be as large as the take.
 */
export class FilteredMono {
  private readonly filter = new BiquadCascade(1, 1, 0)
  private readonly samples: Float32Array
  private start = 0
  private end = 0

  /**
   * @param stretchFrames length of a stretch
   * @param backFrames how far a stretch may begin ahead of the last that was asked for
   */
  constructor(
    private readonly sound: Sound,
    lowestHz: number,
    private readonly stretchFrames: number,
    private readonly backFrames: number,
  ) {
    this.filter.set([highPass(lowestHz, Math.SQRT1_2, sound.sampleRate)])
    this.samples = new Float32Array(stretchFrames + backFrames + CHUNK_FRAMES)
  }

  /** The stretch from frame `from` on, 0 behind the end of the sound; the next call overwrites it. */
  read(from: number): Float32Array {
    while (this.end < from + this.stretchFrames) this.goOn(from - this.backFrames)
    return this.samples.subarray(from - this.start, from - this.start + this.stretchFrames)
  }

  /** Drops what lies ahead of `needed`, and fills up. */
  private goOn(needed: number): void {
    const { samples, sound, start, end } = this
    const kept = Math.max(start, Math.min(end, needed))
    samples.copyWithin(0, kept - start, end - start)
    const fresh = samples.subarray(end - kept)
    mixToMono(sound, end, fresh)
    this.filter.process([fresh], Math.max(0, Math.min(fresh.length, frameCount(sound) - end)))
    this.start = kept
    this.end = end + fresh.length
  }
}
