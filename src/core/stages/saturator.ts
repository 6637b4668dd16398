import { dbToGain } from '../dsp/decibels'
import { DelayLine } from '../dsp/delay-line'
import { OVERSAMPLER_LATENCY_FRAMES, OVERSAMPLING, Oversampler } from '../dsp/oversampler'
import { Ramp } from '../dsp/ramp'
import { framesOf, SETTING_RAMP_MS } from '../dsp/time-constant'
import { fastTanh } from '../dsp/waveshaper'
import { plain } from './describe'
import { CHUNK_FRAMES, gainParameter, mixParameter } from './shared-parameters'
import type { Processor, ProcessorHost, StageDefinition } from './stage-definition'

/** Settings of the saturator. `bias` is the offset on the curve, `mix` 0 (dry) to 1. */
export interface SaturatorSettings {
  readonly driveDb: number
  readonly bias: number
  readonly mix: number
  readonly outputDb: number
}

/** Corner of the high-pass that takes out the DC a bias makes: far below any voice. */
const DC_CORNER_HZ = 2

/** State of that high-pass below which it is silent. */
const SILENCE = 1e-20

/**
 * Static curve run at eight times the rate between linear-phase half-band filters, so that the harmonics it makes
 * do not fold back. Dry and wet are aligned to the frame.
 */
class SaturatorProcessor implements Processor<SaturatorSettings> {
  readonly latencyFrames = OVERSAMPLER_LATENCY_FRAMES
  private readonly drive: Ramp
  private readonly bias: Ramp
  private readonly mix: Ramp
  private readonly output: Ramp
  private readonly oversamplers: readonly Oversampler[]
  private readonly delays: readonly DelayLine[]
  private readonly dc: Float64Array
  private readonly dcCoefficient: number
  private readonly wet = new Float64Array(CHUNK_FRAMES)
  private readonly shaped = new Float64Array(CHUNK_FRAMES * OVERSAMPLING)
  private readonly rampFrames: number
  private started = false

  constructor(settings: SaturatorSettings, { sampleRate, channelCount }: ProcessorHost) {
    this.drive = new Ramp(dbToGain(settings.driveDb))
    this.bias = new Ramp(settings.bias)
    this.mix = new Ramp(settings.mix)
    this.output = new Ramp(dbToGain(settings.outputDb))
    this.rampFrames = framesOf(SETTING_RAMP_MS, sampleRate)
    this.oversamplers = Array.from({ length: channelCount }, () => new Oversampler(CHUNK_FRAMES))
    this.delays = Array.from({ length: channelCount }, () => new DelayLine(OVERSAMPLER_LATENCY_FRAMES))
    this.dc = new Float64Array(channelCount)
    this.dcCoefficient = 1 - Math.exp((-2 * Math.PI * DC_CORNER_HZ) / sampleRate)
  }

  set({ driveDb, bias, mix, outputDb }: SaturatorSettings): void {
    const frames = this.started ? this.rampFrames : 0
    this.drive.goTo(dbToGain(driveDb), frames)
    this.bias.goTo(bias, frames)
    this.mix.goTo(mix, frames)
    this.output.goTo(dbToGain(outputDb), frames)
  }

  process(channels: readonly Float32Array[], frames: number): void {
    this.started = true
    let from = 0
    while (from < frames) {
      const left = Math.max(this.drive.left, this.bias.left, this.mix.left, this.output.left)
      const count = Math.min(CHUNK_FRAMES, frames - from, left > 0 ? left : CHUNK_FRAMES)
      for (let c = 0; c < channels.length; c++) {
        const samples = channels[c]
        if (samples) this.processChunk(samples, c, from, count)
      }
      for (const ramp of [this.drive, this.bias, this.mix, this.output]) ramp.advanceBy(count)
      from += count
    }
  }

  reset(): void {
    for (const ramp of [this.drive, this.bias, this.mix, this.output]) ramp.finish()
    for (const oversampler of this.oversamplers) oversampler.reset()
    for (const delay of this.delays) delay.reset()
    this.dc.fill(0)
    this.started = false
  }

  private processChunk(samples: Float32Array, c: number, from: number, count: number): void {
    const { wet, dcCoefficient } = this
    const oversampler = this.oversamplers[c]
    if (!oversampler) return
    for (let n = 0; n < count; n++) wet[n] = samples[from + n] ?? 0
    oversampler.up(wet, count, this.shaped)
    this.shape(count)
    oversampler.down(this.shaped, count, wet)
    this.delays[c]?.process(samples, from, count)
    let mix = this.mix.now
    let output = this.output.now
    const mixStep = this.mix.perFrame
    const outputStep = this.output.perFrame
    let dc = this.dc[c] ?? 0
    for (let n = 0; n < count; n++) {
      mix += mixStep
      output += outputStep
      const shaped = wet[n] ?? 0
      dc += dcCoefficient * (shaped - dc)
      if (dc < SILENCE && dc > -SILENCE) dc = 0
      const dry = samples[from + n] ?? 0
      samples[from + n] = output * (dry + mix * (shaped - dc - dry))
    }
    this.dc[c] = dc
  }

  /** The curve of `saturationCurve`, at the higher rate; while a setting moves, it moves once a base frame. */
  private shape(count: number): void {
    const { shaped } = this
    let drive = this.drive.now
    let bias = this.bias.now
    const driveStep = this.drive.perFrame
    const biasStep = this.bias.perFrame
    let rest = fastTanh(bias)
    let scale = 1 / (drive * (1 - rest * rest))
    const moving = driveStep !== 0 || biasStep !== 0
    for (let n = 0; n < count; n++) {
      if (moving) {
        drive += driveStep
        bias += biasStep
        rest = fastTanh(bias)
        scale = 1 / (drive * (1 - rest * rest))
      }
      const end = (n + 1) * OVERSAMPLING
      for (let i = n * OVERSAMPLING; i < end; i++) {
        shaped[i] = (fastTanh(drive * (shaped[i] ?? 0) + bias) - rest) * scale
      }
    }
  }
}

/** The saturator. */
export const saturator: StageDefinition<SaturatorSettings> = {
  label: 'Saturator',
  purpose: 'Adds harmonics by bending loud parts of the wave.',
  parameters: {
    driveDb: {
      type: 'number',
      label: 'Drive',
      unit: 'dB',
      min: 0,
      max: 24,
      default: 6,
      scale: 'linear',
      step: 0.5,
      digits: 1,
      help: 'How far the wave is pushed into the bend of the curve.',
    },
    bias: {
      type: 'number',
      label: 'Bias',
      unit: '',
      min: -1,
      max: 1,
      default: 0,
      scale: 'linear',
      step: 0.01,
      digits: 2,
      help: 'At 0 only odd harmonics are added; away from 0 even ones too.',
    },
    mix: mixParameter('How much of the output is saturated; the rest is the input as it came.'),
    outputDb: gainParameter('Output', 'Level after the curve.', -24, 24),
  },
  reducesGain: false,
  createProcessor: (settings, host) => new SaturatorProcessor(settings, host),
  magnitudeDb: null,
  describe: ({ driveDb, mix }) =>
    mix === 0 ? 'Adds nothing: mix 0 %' : `Bends the wave, driven ${plain(driveDb, 1)} dB`,
}
