import { highPass } from '../dsp/bilinear'
import { BiquadCascade } from '../dsp/biquad-cascade'
import { dbToGain } from '../dsp/decibels'
import { DelayLine } from '../dsp/delay-line'
import { fastDbToGain } from '../dsp/exp2'
import { limitedFrequencyHz } from '../dsp/frequency-limit'
import { LevelDelay } from '../dsp/level-delay'
import { linkedPeak } from '../dsp/linked-peak'
import { MeanSquareWindow } from '../dsp/mean-square-window'
import { Ramp } from '../dsp/ramp'
import { ReductionEnvelope } from '../dsp/reduction-envelope'
import { framesOf, SETTING_RAMP_MS } from '../dsp/time-constant'
import { CHUNK_FRAMES } from './shared-parameters'
import type { Processor, ProcessorHost } from './stage-definition'

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

/** Window of the RMS detector: whole periods of every multiple of 100 Hz, so that low notes read steadily. */
export const RMS_WINDOW_MS = 10

const BUTTERWORTH_Q = Math.SQRT1_2

/**
 * Feed-forward compressor after D. Giannoulis, M. Massberg, J. D. Reiss, "Digital Dynamic Range Compressor
 * Design: A Tutorial and Analysis", J. Audio Eng. Soc. 60(6), 2012: linked level, gain computer in dB, smooth
 * branching ballistics on the reduction.
 */
export class CompressorProcessor implements Processor<CompressorSettings> {
  readonly latencyFrames: number
  private readonly envelope: ReductionEnvelope
  /** Gains of the two paths. Makeup and mix as ramps of their own would bulge where both move. */
  private readonly dry: Ramp
  private readonly wet: Ramp
  private readonly rampFrames: number
  private readonly delays: readonly DelayLine[]
  private readonly levelDelay: LevelDelay
  private readonly window: MeanSquareWindow
  private readonly sideChainFilter: BiquadCascade
  private readonly sideChain: readonly Float32Array[]
  private readonly levels = new Float64Array(CHUNK_FRAMES)
  private readonly gains = new Float64Array(CHUNK_FRAMES)
  private levelDelayFrames = 0
  private started = false

  constructor(
    private settings: CompressorSettings,
    private readonly host: ProcessorHost,
  ) {
    const { sampleRate, channelCount } = host
    this.latencyFrames = framesOf(host.lookaheadReserveMs ?? settings.lookaheadMs, sampleRate)
    this.envelope = new ReductionEnvelope({ ...settings, rangeDb: Number.POSITIVE_INFINITY }, sampleRate)
    this.dry = new Ramp(dryGain(settings))
    this.wet = new Ramp(wetGain(settings))
    this.rampFrames = framesOf(SETTING_RAMP_MS, sampleRate)
    this.delays = Array.from({ length: channelCount }, () => new DelayLine(this.latencyFrames))
    this.levelDelay = new LevelDelay(this.latencyFrames)
    this.window = new MeanSquareWindow(framesOf(RMS_WINDOW_MS, sampleRate))
    this.sideChainFilter = new BiquadCascade(1, channelCount, this.rampFrames)
    this.sideChain = Array.from({ length: channelCount }, () => new Float32Array(CHUNK_FRAMES))
    this.set(settings)
  }

  set(settings: CompressorSettings): void {
    const rampFrames = this.started ? this.rampFrames : 0
    const { sampleRate } = this.host
    const { sideChainHighPassHz, lookaheadMs } = settings
    this.envelope.set({ ...settings, rangeDb: Number.POSITIVE_INFINITY }, rampFrames)
    this.dry.goTo(dryGain(settings), rampFrames)
    this.wet.goTo(wetGain(settings), rampFrames)
    this.levelDelayFrames = Math.max(0, this.latencyFrames - framesOf(lookaheadMs, sampleRate))
    this.sideChainFilter.set(
      sideChainHighPassHz > 0
        ? [highPass(limitedFrequencyHz(sideChainHighPassHz, sampleRate), BUTTERWORTH_Q, sampleRate)]
        : [],
    )
    this.settings = settings
  }

  process(channels: readonly Float32Array[], frames: number, gainDb?: Float32Array): void {
    this.started = true
    let from = 0
    while (from < frames) {
      const rampLeft = Math.max(this.envelope.rampFramesLeft, this.dry.left, this.wet.left)
      const count = Math.min(CHUNK_FRAMES, frames - from, rampLeft > 0 ? rampLeft : CHUNK_FRAMES)
      this.detect(channels, from, count)
      this.envelope.run(this.levels, count)
      if (gainDb) for (let n = 0; n < count; n++) gainDb[from + n] = -(this.levels[n] ?? 0)
      this.computeGains(count)
      this.apply(channels, from, count)
      from += count
    }
  }

  reset(): void {
    this.envelope.reset()
    this.dry.finish()
    this.wet.finish()
    this.levelDelay.reset()
    this.window.reset()
    this.sideChainFilter.reset()
    for (const delay of this.delays) delay.reset()
    this.started = false
  }

  private detect(channels: readonly Float32Array[], from: number, count: number): void {
    if (this.settings.sideChainHighPassHz > 0) {
      for (let c = 0; c < this.sideChain.length; c++) {
        const source = channels[c]
        const copy = this.sideChain[c]
        if (source && copy) for (let n = 0; n < count; n++) copy[n] = source[from + n] ?? 0
      }
      this.sideChainFilter.process(this.sideChain, count)
      linkedPeak(this.sideChain, 0, count, this.levels)
    } else {
      linkedPeak(channels, from, count, this.levels)
    }
    if (this.settings.detector === 'rms') this.window.process(this.levels, count)
    this.levelDelay.process(this.levels, count, this.levelDelayFrames)
  }

  /** Turns reductions in dB into one linear gain a frame, makeup and mix included. */
  private computeGains(count: number): void {
    const { levels, gains } = this
    let dry = this.dry.now
    let wet = this.wet.now
    const dryStep = this.dry.perFrame
    const wetStep = this.wet.perFrame
    for (let n = 0; n < count; n++) {
      dry += dryStep
      wet += wetStep
      const reduction = levels[n] ?? 0
      const gain = reduction > 0 ? fastDbToGain(-reduction) : 1
      gains[n] = dry + wet * gain
    }
    this.dry.advanceTo(dry, count)
    this.wet.advanceTo(wet, count)
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

function dryGain({ mix }: CompressorSettings): number {
  return 1 - mix
}

function wetGain({ mix, makeupDb }: CompressorSettings): number {
  return mix * dbToGain(makeupDb)
}
