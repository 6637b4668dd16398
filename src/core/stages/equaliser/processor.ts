import { BiquadCascade } from '../../dsp/filters/biquad-cascade'
import { type Processor, type ProcessorHost, type ProcessorMaker, settingFadeFrames } from '../processor'
import { type EqualiserSettings, MAX_SECTIONS } from './band'
import { MAX_BANDS } from './definition'
import { sectionsOf } from './sections'

class EqualiserProcessor implements Processor<EqualiserSettings> {
  readonly latencyFrames = 0
  private readonly cascade: BiquadCascade

  constructor(
    settings: EqualiserSettings,
    private readonly host: ProcessorHost,
  ) {
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

/** How equalisers are made to work. */
export const equaliserProcessor: ProcessorMaker<EqualiserSettings> = {
  create: (settings, host) => new EqualiserProcessor(settings, host),
}
