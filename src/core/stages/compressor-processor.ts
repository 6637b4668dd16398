import { upToEnd } from '../dsp/cross-fade'
import { dbToGain } from '../dsp/decibels'
import { DelayLine } from '../dsp/delay-line'
import { FadingReduction, type Paths } from '../dsp/fading-reduction'
import { framesOf } from '../dsp/time-constant'
import { CompressorDetector } from './compressor-detector'
import { CHUNK_FRAMES } from './shared-parameters'
import { type Processor, type ProcessorHost, settingFadeFrames } from './stage-definition'

/** Settings of the compressor. Levels and gains in dB, times in ms, mix 0 (dry) to 1 (compressed). */
export interface CompressorSettings {
  readonly thresholdDb: number
  readonly ratio: number
  readonly kneeDb: number
  readonly attackMs: number
  readonly releaseMs: number
  readonly lookaheadMs: number
  readonly detector: 'peak' | 'rms'
  readonly sideChainHighPassHz: number
  readonly makeupDb: number
  readonly mix: number
}

/** Settings with the linear gains of the two paths. */
type SettingsWithPaths = CompressorSettings & Paths

/**
 * Feed-forward compressor after D. Giannoulis, M. Massberg, J. D. Reiss, "Digital Dynamic Range Compressor
 * Design: A Tutorial and Analysis", J. Audio Eng. Soc. 60(6), 2012: linked level, gain computer in dB, smooth
 * branching ballistics on the reduction. New settings are faded to in the gain, all together: one by one, makeup
 * and reduction would bulge where both move.
 */
export class CompressorProcessor implements Processor<CompressorSettings> {
  readonly latencyFrames: number
  private readonly detector: CompressorDetector
  private readonly reduction: FadingReduction<SettingsWithPaths>
  private readonly delays: readonly DelayLine[]
  private readonly levels = new Float64Array(CHUNK_FRAMES)
  private readonly reductions = new Float64Array(CHUNK_FRAMES)
  private readonly earlierReductions = new Float64Array(CHUNK_FRAMES)
  private readonly gains = new Float64Array(CHUNK_FRAMES)
  private started = false

  constructor(settings: CompressorSettings, host: ProcessorHost) {
    const { sampleRate, channelCount } = host
    this.latencyFrames = framesOf(host.lookaheadReserveMs ?? settings.lookaheadMs, sampleRate)
    this.detector = new CompressorDetector(host, this.latencyFrames)
    const fadeFrames = settingFadeFrames(host)
    this.reduction = new FadingReduction(
      withPaths(settings),
      sampleRate,
      fadeFrames,
      (from, to) => to.wet > from.wet,
    )
    this.delays = Array.from({ length: channelCount }, () => new DelayLine(this.latencyFrames))
    this.set(settings)
  }

  set(settings: CompressorSettings): void {
    this.detector.set(settings, this.started)
    this.reduction.set(withPaths(settings))
  }

  process(channels: readonly Float32Array[], frames: number, gainDb?: Float32Array): void {
    this.run(channels, frames, gainDb, true)
  }

  trace(channels: readonly Float32Array[], frames: number, gainDb: Float32Array): void {
    this.run(channels, frames, gainDb, false)
  }

  hold(channels: readonly Float32Array[], frames: number, gainDb: Float32Array): void {
    const { reduction, reductions, earlierReductions, gains } = this
    for (let from = 0; from < frames; from += CHUNK_FRAMES) {
      const count = Math.min(CHUNK_FRAMES, frames - from)
      for (let n = 0; n < count; n++) reductions[n] = -(gainDb[from + n] ?? 0)
      reduction.mix(reductions, earlierReductions, count, pathsThemselves, gains)
      this.apply(channels, from, count)
    }
  }

  reset(): void {
    this.detector.reset()
    this.reduction.reset()
    for (const delay of this.delays) delay.reset()
    this.started = false
  }

  private run(
    channels: readonly Float32Array[],
    frames: number,
    gainDb: Float32Array | undefined,
    isHeard: boolean,
  ): void {
    this.started = true
    const { detector, reduction, levels, reductions, earlierReductions, gains } = this
    let from = 0
    while (from < frames) {
      const chunk = Math.min(CHUNK_FRAMES, frames - from)
      const count = upToEnd(upToEnd(chunk, detector.fadeFramesLeft), reduction.fade.framesLeft)
      detector.process(channels, from, count, levels)
      reduction.run(levels, count, reductions, earlierReductions)
      if (gainDb) for (let n = 0; n < count; n++) gainDb[from + n] = -(reductions[n] ?? 0)
      // One linear gain a frame, makeup and mix included.
      if (isHeard) reduction.mix(reductions, earlierReductions, count, pathsThemselves, gains)
      reduction.fade.pass(count)
      if (isHeard) this.apply(channels, from, count)
      from += count
    }
  }

  private apply(channels: readonly Float32Array[], from: number, count: number): void {
    const { gains } = this
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
