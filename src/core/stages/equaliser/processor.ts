import { BiquadCascade } from '../../dsp/filters/biquad-cascade'
import { type Processor, type ProcessorHost, type ProcessorMaker, settingFadeFrames } from '../processor'
import { type EqualiserSettings, MAX_SECTIONS } from './band'
import { equaliser, MAX_BANDS } from './definition'
import { sectionsOf } from './sections'

class EqualiserProcessor implements Processor<EqualiserSettings> {
  readonly latencyFrames: number
  private readonly cascade: BiquadCascade

  constructor(
    settings: EqualiserSettings,
    private readonly host: ProcessorHost,
  ) {
    this.latencyFrames = equaliser.latencyFrames(settings, host.sampleRate)
    this.cascade = new BiquadCascade(MAX_BANDS * MAX_SECTIONS, host.channelCount, settingFadeFrames(host))
    this.set(settings)
  }

  set(settings: EqualiserSettings): void {
    this.cascade.set(sectionsOf(settings, this.host.sampleRate))
  }

  process(channels: readonly Float32Array[], frames: number): void {
    this.cascade.process(channels, frames)
  }

  reset(): void {
    this.cascade.reset()
  }
}

/** Makes equalisers. */
export const equaliserProcessor: ProcessorMaker<EqualiserSettings> = {
  create: (settings, host) => new EqualiserProcessor(settings, host),
}
