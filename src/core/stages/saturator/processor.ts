import { CrossFade, upToEnd } from '../../dsp/fades/cross-fade'
import { DelayLine } from '../../dsp/fades/delay-line'
import { Oversampler } from '../../dsp/oversampling/oversampler'
import { OVERSAMPLER_LATENCY_FRAMES, OVERSAMPLING } from '../../dsp/oversampling/rate'
import { curveAt, fastTanh, shape, type TanhCurve } from '../../dsp/oversampling/waveshaper'
import { dbToGain } from '../../sound/decibels'
import {
  CHUNK_FRAMES,
  type Processor,
  type ProcessorHost,
  type ProcessorMaker,
  settingFadeFrames,
} from '../processor'
import { type SaturatorSettings, saturator } from './definition'

/** Corner of the high-pass that takes out the DC a bias makes: far below any voice. */
const DC_CORNER_HZ = 2

/** Whole frames a sound takes to the higher rate: half of the way there and back. */
const WAY_UP_FRAMES = OVERSAMPLER_LATENCY_FRAMES >> 1

/** Pairs of frames of the higher rate for each frame of the base rate. */
const PAIRS = OVERSAMPLING / 2

/** State of that high-pass below which it is silent. */
const SILENCE = 1e-20

/** The curve, and what the dry sound is multiplied by. */
interface Curve extends TanhCurve {
  readonly dry: number
}

/** The curve of {@link saturationCurve}, with mix and output level. */
function curveOf({ driveDb, bias, mix, outputDb }: SaturatorSettings): Curve {
  const drive = dbToGain(driveDb)
  const rest = fastTanh(bias)
  const output = dbToGain(outputDb)
  const slope = drive * (1 - rest * rest)
  return { drive, bias, rest, wet: (output * mix) / slope, dry: output * (1 - mix) }
}

/**
 * Static curve run at eight times the rate between linear-phase half-band filters, so that the harmonics it makes
 * do not fold back. Dry and wet are aligned to the frame. A new curve is faded to beside the old one: settings that
 * moved would pass through curves steeper than both.
 */
class SaturatorProcessor implements Processor<SaturatorSettings> {
  readonly latencyFrames: number
  private readonly curves: CrossFade<Curve>
  private readonly oversamplers: readonly Oversampler[]
  /** Delays of the dry path as long as the way up, and as the way down: it is weighed where the wet path is. */
  private readonly waysUp: readonly DelayLine[]
  private readonly waysDown: readonly DelayLine[]
  private readonly dc: Float64Array
  private readonly dcCoefficient: number

  constructor(settings: SaturatorSettings, host: ProcessorHost) {
    const { sampleRate, channelCount } = host
    this.latencyFrames = saturator.latencyFrames(settings, sampleRate)
    this.curves = new CrossFade(curveOf(settings), settingFadeFrames(host))
    this.oversamplers = Array.from({ length: channelCount }, () => new Oversampler(CHUNK_FRAMES))
    const delays = (frames: number) => Array.from({ length: channelCount }, () => new DelayLine(frames))
    this.waysUp = delays(WAY_UP_FRAMES)
    this.waysDown = delays(OVERSAMPLER_LATENCY_FRAMES - WAY_UP_FRAMES)
    this.dc = new Float64Array(channelCount)
    this.dcCoefficient = 1 - Math.exp((-2 * Math.PI * DC_CORNER_HZ) / sampleRate)
  }

  set(settings: SaturatorSettings): void {
    this.curves.goTo(curveOf(settings))
  }

  process(channels: readonly Float32Array[], frames: number): void {
    let from = 0
    while (from < frames) {
      const count = upToEnd(Math.min(CHUNK_FRAMES, frames - from), this.curves.framesLeft)
      for (let c = 0; c < channels.length; c++) {
        const samples = channels[c]
        if (samples) this.processChunk(samples, c, from, count)
      }
      this.curves.pass(count)
      from += count
    }
  }

  reset(): void {
    this.curves.reset()
    for (const oversampler of this.oversamplers) oversampler.reset()
    for (const delay of [...this.waysUp, ...this.waysDown]) delay.reset()
    this.dc.fill(0)
  }

  private processChunk(samples: Float32Array, c: number, from: number, count: number): void {
    const { curves, dcCoefficient } = this
    const oversampler = this.oversamplers[c]
    if (!oversampler) return
    oversampler.up(samples, from, count)
    shape(oversampler.raised, oversampler.shaped, count * PAIRS, curves.standing)
    if (curves.framesLeft > 0) this.fadeToComing(oversampler, count)
    oversampler.down(count)
    const wet = oversampler.output
    this.waysUp[c]?.process(samples, from, count)
    this.weighDry(samples, from, count)
    this.waysDown[c]?.process(samples, from, count)
    let dc = this.dc[c] ?? 0
    for (let n = 0; n < count; n++) {
      const value = wet[n] ?? 0
      dc += dcCoefficient * (value - dc)
      if (dc < SILENCE && dc > -SILENCE) dc = 0
      samples[from + n] = (samples[from + n] ?? 0) + (value - dc)
    }
    this.dc[c] = dc
  }

  private weighDry(samples: Float32Array, from: number, count: number): void {
    const { curves } = this
    const { dry } = curves.standing
    const change = curves.coming.dry - dry
    for (let n = 0; n < count; n++)
      samples[from + n] = (samples[from + n] ?? 0) * (dry + curves.share(n) * change)
  }

  /** From what the standing curve makes to what the coming one makes; the share of that moves once a base frame. */
  private fadeToComing({ raised, shaped }: Oversampler, count: number): void {
    const { curves } = this
    const { first, firstStart, second, secondStart, step } = shaped
    for (let n = 0; n < count; n++) {
      const share = curves.share(n)
      for (let m = n * PAIRS; m < (n + 1) * PAIRS; m++) {
        const a = firstStart + m * step
        const b = secondStart + m * step
        const before = first[a] ?? 0
        const beforeSecond = second[b] ?? 0
        first[a] = before + share * (curveAt(raised[2 * m] ?? 0, curves.coming) - before)
        second[b] = beforeSecond + share * (curveAt(raised[2 * m + 1] ?? 0, curves.coming) - beforeSecond)
      }
    }
  }
}

/** Makes saturators. */
export const saturatorProcessor: ProcessorMaker<SaturatorSettings> = {
  create: (settings, host) => new SaturatorProcessor(settings, host),
}
