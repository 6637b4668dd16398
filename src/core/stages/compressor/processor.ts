import { FadingReduction, type Paths } from '../../dsp/dynamics/fading-reduction'
import { DelayLine } from '../../dsp/fades/delay-line'
import { dbToGain } from '../../sound/decibels'
import { type Processor, type ProcessorHost, type ProcessorMaker, settingFadeFrames } from '../processor'
import { ReducingProcessor } from '../reducing-processor'
import { type CompressorSettings, compressor } from './definition'
import { CompressorDetector } from './detector'

/** Settings with the linear gains of the two paths. */
type SettingsWithPaths = CompressorSettings & Paths

/**
 * Feed-forward compressor after D. Giannoulis, M. Massberg, J. D. Reiss, "Digital Dynamic Range Compressor
 * Design: A Tutorial and Analysis", J. Audio Eng. Soc. 60(6), 2012: linked level, gain computer in dB, smooth
 * branching ballistics on the reduction. New settings are faded to in the gain, all together: one by one, makeup
 * and reduction would bulge where both move.
 */
class CompressorProcessor
  extends ReducingProcessor<SettingsWithPaths>
  implements Processor<CompressorSettings>
{
  readonly latencyFrames: number
  private readonly detector: CompressorDetector
  private readonly delays: readonly DelayLine[]

  constructor(settings: CompressorSettings, host: ProcessorHost) {
    const { sampleRate, channelCount } = host
    const raises = (from: SettingsWithPaths, to: SettingsWithPaths) => to.wet > from.wet
    super(
      new FadingReduction(withPaths(settings), sampleRate, settingFadeFrames(host), raises),
      // One linear gain a frame, makeup and mix included.
      pathsThemselves,
    )
    this.latencyFrames = compressor.latencyFrames(settings, sampleRate, host.maxLookaheadMs)
    this.detector = new CompressorDetector(host, this.latencyFrames)
    this.delays = Array.from({ length: channelCount }, () => new DelayLine(this.latencyFrames))
    this.set(settings)
  }

  set(settings: CompressorSettings): void {
    this.detector.set(settings, this.started)
    this.reduction.set(withPaths(settings))
  }

  override reset(): void {
    super.reset()
    this.detector.reset()
    for (const delay of this.delays) delay.reset()
  }

  protected override get detectorFramesLeft(): number {
    return this.detector.fadeFramesLeft
  }

  protected override prepare(): void {}

  protected override detect(
    channels: readonly Float32Array[],
    from: number,
    count: number,
    levels: Float64Array,
  ): void {
    this.detector.process(channels, from, count, levels)
  }

  protected override apply(
    channels: readonly Float32Array[],
    from: number,
    count: number,
    gains: Float64Array,
  ): void {
    for (let c = 0; c < channels.length; c++) {
      const samples = channels[c]
      if (!samples) continue
      this.delays[c]?.process(samples, from, count)
      for (let n = 0; n < count; n++) samples[from + n] = (samples[from + n] ?? 0) * (gains[n] ?? 1)
    }
  }
}

function withPaths(settings: CompressorSettings): SettingsWithPaths {
  const { mix, makeupDb } = settings
  return { ...settings, dry: 1 - mix, wet: mix * dbToGain(makeupDb) }
}

function pathsThemselves(settings: SettingsWithPaths): Paths {
  return settings
}

/** Makes compressors. */
export const compressorProcessor: ProcessorMaker<CompressorSettings> = {
  create: (settings, host) => new CompressorProcessor(settings, host),
}
