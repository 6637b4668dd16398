import { FadingReduction, type Paths } from '../../dsp/dynamics/fading-reduction'
import { linkedPeak } from '../../dsp/dynamics/linked-peak'
import { smoothStep } from '../../dsp/fades/cross-fade'
import { Ramp } from '../../dsp/fades/ramp'
import { limitedFrequencyHz } from '../../dsp/filters/biquad'
import { BiquadCascade } from '../../dsp/filters/biquad-cascade'
import { linkwitzRiley4 } from '../../dsp/filters/crossover'
import {
  CHUNK_FRAMES,
  type Processor,
  type ProcessorHost,
  type ProcessorMaker,
  settingFadeFrames,
} from '../processor'
import { ReducingProcessor } from '../reducing-processor'
import { type DeEsserSettings, deEsser } from './definition'

/**
 * Band-split de-esser. The level of what lies above a Linkwitz-Riley crossover drives a gain computer. The halves
 * of the crossover add up to an all-pass, so the output is written as that all-pass less what is taken from the
 * upper half: with nothing taken it is the all-pass, bit for bit, and the lower half need not be computed.
 */
class DeEsserProcessor extends ReducingProcessor<DeEsserSettings> implements Processor<DeEsserSettings> {
  readonly latencyFrames: number
  protected override readonly detectorFramesLeft = 0
  private readonly high: BiquadCascade
  private readonly sum: BiquadCascade
  private readonly upper: readonly Float32Array[]
  /** 1 in split band mode, 0 in full band mode. */
  private readonly split: Ramp
  private readonly rampFrames: number

  constructor(
    settings: DeEsserSettings,
    private readonly host: ProcessorHost,
  ) {
    const { sampleRate, channelCount } = host
    const rampFrames = settingFadeFrames(host)
    super(new FadingReduction(settings, sampleRate, rampFrames), takenAway)
    this.latencyFrames = deEsser.latencyFrames(settings, sampleRate)
    this.rampFrames = rampFrames
    this.high = new BiquadCascade(2, channelCount, rampFrames)
    this.sum = new BiquadCascade(1, channelCount, rampFrames)
    this.upper = Array.from({ length: channelCount }, () => new Float32Array(CHUNK_FRAMES))
    this.split = new Ramp(splitOf(settings))
    this.set(settings)
  }

  set(settings: DeEsserSettings): void {
    const { sampleRate } = this.host
    const rampFrames = this.started ? this.rampFrames : 0
    const crossover = linkwitzRiley4(limitedFrequencyHz(settings.crossoverHz, sampleRate), sampleRate)
    this.high.set(crossover.high)
    this.sum.set(settings.band === 'above' ? [crossover.sum] : [])
    this.reduction.set(settings)
    this.split.goTo(splitOf(settings), rampFrames)
  }

  override reset(): void {
    super.reset()
    this.high.reset()
    this.sum.reset()
    this.split.finish()
  }

  protected override prepare(channels: readonly Float32Array[], from: number, count: number): void {
    this.high.process(channels, count, from, this.upper, 0)
  }

  protected override detect(
    _channels: readonly Float32Array[],
    _from: number,
    count: number,
    levels: Float64Array,
  ): void {
    linkedPeak(this.upper, 0, count, levels)
  }

  /** @param taken what is taken from each frame, as a share of it */
  protected override apply(
    channels: readonly Float32Array[],
    from: number,
    count: number,
    taken: Float64Array,
    reduces: boolean,
  ): void {
    this.sum.process(channels, count, from)
    if (reduces) this.take(channels, from, count, taken)
    this.split.pass(count)
  }

  private take(channels: readonly Float32Array[], from: number, count: number, taken: Float64Array): void {
    const { split } = this
    const moving = split.left > 0
    const settled = split.now
    for (let c = 0; c < channels.length; c++) {
      const samples = channels[c]
      const upper = this.upper[c]
      if (!samples || !upper) continue
      for (let n = 0; n < count; n++) {
        const whole = samples[from + n] ?? 0
        const share = moving ? smoothStep(split.at(n)) : settled
        samples[from + n] = whole - (taken[n] ?? 0) * (whole + share * ((upper[n] ?? 0) - whole))
      }
    }
  }
}

/** 1 less the gain: exactly 0 where nothing is reduced. */
const TAKEN_AWAY: Paths = { dry: 1, wet: -1 }

function takenAway(): Paths {
  return TAKEN_AWAY
}

/** A de-esser that reduces nothing: its all-pass alone. */
class IdleDeEsserProcessor implements Processor<DeEsserSettings> {
  readonly latencyFrames: number
  private readonly sum: BiquadCascade

  constructor(
    settings: DeEsserSettings,
    private readonly host: ProcessorHost,
  ) {
    this.latencyFrames = deEsser.latencyFrames(settings, host.sampleRate)
    this.sum = new BiquadCascade(1, host.channelCount, settingFadeFrames(host))
    this.set(settings)
  }

  set({ band, crossoverHz }: DeEsserSettings): void {
    const { sampleRate } = this.host
    const { sum } = linkwitzRiley4(limitedFrequencyHz(crossoverHz, sampleRate), sampleRate)
    this.sum.set(band === 'above' ? [sum] : [])
  }

  process(channels: readonly Float32Array[], frames: number): void {
    this.sum.process(channels, frames)
  }

  reset(): void {
    this.sum.reset()
  }
}

function splitOf({ band }: DeEsserSettings): number {
  return band === 'above' ? 1 : 0
}

/** Makes de-essers. */
export const deEsserProcessor: ProcessorMaker<DeEsserSettings> = {
  create: (settings, host) => new DeEsserProcessor(settings, host),
  createIdle: (settings, host) => new IdleDeEsserProcessor(settings, host),
}
