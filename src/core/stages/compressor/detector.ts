import { LevelDelay } from '../../dsp/dynamics/level-delay'
import { linkedPeak } from '../../dsp/dynamics/linked-peak'
import { MeanSquareWindow } from '../../dsp/dynamics/mean-square-window'
import { framesOf } from '../../dsp/dynamics/time-constant'
import { smoothStep } from '../../dsp/fades/cross-fade'
import { Ramp } from '../../dsp/fades/ramp'
import { highPass } from '../../dsp/filters/bilinear'
import { limitedFrequencyHz } from '../../dsp/filters/biquad'
import { BiquadCascade } from '../../dsp/filters/biquad-cascade'
import { CHUNK_FRAMES, type ProcessorHost, settingFadeFrames } from '../processor'
import { type DetectorSettings, RMS_WINDOW_MS } from './definition'

const BUTTERWORTH_Q = Math.SQRT1_2

/** The level a compressor acts on: side-chain high-pass, peak or RMS linked over all channels, lookahead. */
export class CompressorDetector {
  private readonly delay: LevelDelay
  private readonly window: MeanSquareWindow
  private readonly filter: BiquadCascade
  private readonly filtered: readonly Float32Array[]
  /** Whether the detector is a peak's (0) or an RMS one's (1). */
  private readonly rmsShare = new Ramp(0)
  private readonly rmsLevels = new Float64Array(CHUNK_FRAMES)
  private readonly fadeFrames: number

  /** @param latencyFrames by how much the sound is delayed, which bounds the lookahead. */
  constructor(
    private readonly host: ProcessorHost,
    private readonly latencyFrames: number,
  ) {
    const { sampleRate, channelCount } = host
    this.fadeFrames = settingFadeFrames(host)
    this.delay = new LevelDelay(latencyFrames, this.fadeFrames)
    this.window = new MeanSquareWindow(framesOf(RMS_WINDOW_MS, sampleRate))
    this.filter = new BiquadCascade(1, channelCount, this.fadeFrames)
    this.filtered = Array.from({ length: channelCount }, () => new Float32Array(CHUNK_FRAMES))
  }

  /** Frames that `process` may be asked for at most, while above 0. */
  get fadeFramesLeft(): number {
    return this.delay.fadeFramesLeft
  }

  /** Goes to new settings: smoothly, or at once. */
  set({ detector, lookaheadMs, sideChainHighPassHz }: DetectorSettings, smoothly: boolean): void {
    const { sampleRate } = this.host
    const delayFrames = Math.max(0, this.latencyFrames - framesOf(lookaheadMs, sampleRate))
    this.delay.goTo(delayFrames)
    // The window is not fed while only peaks are asked for: what it would hold is long past.
    if (this.rmsShare.left === 0 && this.rmsShare.now === 0) this.window.reset()
    this.rmsShare.goTo(detector === 'rms' ? 1 : 0, smoothly ? this.fadeFrames : 0)
    this.filter.set(
      sideChainHighPassHz > 0
        ? [highPass(limitedFrequencyHz(sideChainHighPassHz, sampleRate), BUTTERWORTH_Q, sampleRate)]
        : [],
    )
  }

  /** Writes the linear level of `count` frames of `channels`, from frame `from` on, to `levels`. */
  process(channels: readonly Float32Array[], from: number, count: number, levels: Float64Array): void {
    const { filter, filtered, rmsShare } = this
    if (filter.changesNothing) {
      filter.process(channels, count, from)
      linkedPeak(channels, from, count, levels)
    } else {
      filter.process(channels, count, from, filtered, 0)
      linkedPeak(filtered, 0, count, levels)
    }
    if (rmsShare.left > 0) this.fadeDetectors(levels, count)
    else if (rmsShare.now === 1) this.window.process(levels, count)
    this.delay.process(levels, count)
  }

  /** Back to silence, all fades finished. */
  reset(): void {
    this.delay.reset()
    this.window.reset()
    this.filter.reset()
    this.rmsShare.finish()
  }

  private fadeDetectors(levels: Float64Array, count: number): void {
    const { rmsLevels, rmsShare } = this
    for (let n = 0; n < count; n++) rmsLevels[n] = levels[n] ?? 0
    this.window.process(rmsLevels, count)
    for (let n = 0; n < count; n++) {
      const peak = levels[n] ?? 0
      levels[n] = peak + smoothStep(rmsShare.at(n)) * ((rmsLevels[n] ?? 0) - peak)
    }
    rmsShare.pass(count)
  }
}
