import { CrossFade, upToEnd } from '../fades/cross-fade'
import { RecentInput } from '../fades/recent-input'
import type { Biquad } from './biquad'
import { BANK_FRAMES, SectionBank } from './section-bank'

/** New sections are run over this many times a fade's length of past input, so that they come in warm. */
const WARM_UP_FADES = 3

/**
 * Second-order sections in series, the same for every channel, with 64-bit state. New sections are faded to: they
 * first hear the recent past, then for the length of the fade both old and new run side by side. Whatever the two
 * are, what comes out lies between what either would have put out; moving coefficients gives no such warrant.
 */
export class BiquadCascade {
  private readonly scratch = new Float64Array(BANK_FRAMES)
  private readonly earlierScratch = new Float64Array(BANK_FRAMES)
  private readonly replayed = new Float32Array(BANK_FRAMES)
  private readonly recent: RecentInput
  private readonly fade: CrossFade<readonly Biquad[]>
  /** The sections last gone to, and those before them. */
  private bank: SectionBank
  private earlier: SectionBank
  private readonly hear = (channel: number, count: number) =>
    this.bank.run(this.replayed, 0, this.scratch, 0, channel, count)
  private framesToFlush = BANK_FRAMES

  /**
   * @param maxSections the most sections `set` will be given.
   * @param channelCount channels that `process` will be given.
   * @param fadeFrames length of a fade to new sections; 0 goes to them at once.
   */
  constructor(maxSections: number, channelCount: number, fadeFrames: number) {
    this.recent = new RecentInput(channelCount, fadeFrames * WARM_UP_FADES)
    this.fade = new CrossFade<readonly Biquad[]>([], fadeFrames, (sections) => this.takeOver(sections))
    this.bank = new SectionBank(maxSections, channelCount)
    this.earlier = new SectionBank(maxSections, channelCount)
  }

  /** Whether the output is the input, bit for bit, until new sections are set. */
  get changesNothing(): boolean {
    return this.fade.framesLeft === 0 && this.bank.changesNothing
  }

  /** Goes to new sections, at once before the first frame, faded after it; the last asked for wins. */
  set(sections: readonly Biquad[]): void {
    if (this.fade.framesLeft === 0 && this.bank.holds(sections)) return
    this.fade.goTo(sections)
  }

  /** Filters `frames` of every channel, from frame `start` on: in place, or into `outputs` from `outputStart` on. */
  process(
    channels: readonly Float32Array[],
    frames: number,
    start = 0,
    outputs = channels,
    outputStart = start,
  ): void {
    const { fade } = this
    const end = start + frames
    let from = start
    while (from < end) {
      const fading = fade.framesLeft > 0
      const count = upToEnd(Math.min(this.framesToFlush, end - from), fade.framesLeft)
      this.recent.write(channels, from, count)
      for (let c = 0; c < channels.length; c++) {
        const samples = channels[c]
        const output = outputs[c]
        if (!samples || !output || (output === samples && this.changesNothing)) continue
        const outputFrom = outputStart + from - start
        if (fading) this.fadeChunk(samples, from, output, outputFrom, c, count)
        else this.bank.run(samples, from, output, outputFrom, c, count)
      }
      this.flushDenormals(count)
      fade.pass(count)
      from += count
    }
  }

  /** Forgets all past input and finishes any fade. */
  reset(): void {
    this.recent.reset()
    this.fade.reset()
    this.bank.forget()
    this.framesToFlush = BANK_FRAMES
  }

  private fadeChunk(
    samples: Float32Array,
    from: number,
    output: Float32Array,
    outputFrom: number,
    channel: number,
    count: number,
  ): void {
    const { scratch, earlierScratch, fade } = this
    this.earlier.run(samples, from, earlierScratch, 0, channel, count)
    this.bank.run(samples, from, scratch, 0, channel, count)
    for (let n = 0; n < count; n++) {
      const before = earlierScratch[n] ?? 0
      output[outputFrom + n] = before + fade.share(n) * ((scratch[n] ?? 0) - before)
    }
  }

  /** Flushes the state every so many frames, wherever blocks are cut. */
  private flushDenormals(count: number): void {
    this.framesToFlush -= count
    if (this.framesToFlush > 0) return
    this.framesToFlush = BANK_FRAMES
    this.bank.flushDenormals()
    this.earlier.flushDenormals()
  }

  /** Puts `sections` to work, warm. */
  private takeOver(sections: readonly Biquad[]): void {
    const { bank } = this
    this.bank = this.earlier
    this.earlier = bank
    this.bank.load(sections)
    this.recent.replay(this.replayed, this.hear)
  }
}
