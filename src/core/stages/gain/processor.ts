import { CrossFade, upToEnd } from '../../dsp/fades/cross-fade'
import { dbToGain } from '../../sound/decibels'
import { type Processor, type ProcessorHost, type ProcessorMaker, settingFadeFrames } from '../processor'
import { type GainSettings, gain } from './definition'

class GainProcessor implements Processor<GainSettings> {
  readonly latencyFrames: number
  private readonly gains: CrossFade<number>

  constructor(settings: GainSettings, host: ProcessorHost) {
    this.latencyFrames = gain.latencyFrames(settings, host.sampleRate)
    this.gains = new CrossFade(dbToGain(settings.gainDb), settingFadeFrames(host))
  }

  set({ gainDb }: GainSettings): void {
    this.gains.goTo(dbToGain(gainDb))
  }

  process(channels: readonly Float32Array[], frames: number): void {
    let from = 0
    while (from < frames) {
      const count = upToEnd(frames - from, this.gains.framesLeft)
      this.apply(channels, from, count)
      this.gains.pass(count)
      from += count
    }
  }

  reset(): void {
    this.gains.reset()
  }

  private apply(channels: readonly Float32Array[], from: number, count: number): void {
    const { gains } = this
    const { standing, coming } = gains
    if (standing === 1 && coming === 1) return
    for (let c = 0; c < channels.length; c++) {
      const samples = channels[c]
      if (!samples) continue
      for (let n = 0; n < count; n++) {
        samples[from + n] = (samples[from + n] ?? 0) * (standing + gains.share(n) * (coming - standing))
      }
    }
  }
}

/** Makes gain stages. */
export const gainProcessor: ProcessorMaker<GainSettings> = {
  create: (settings, host) => new GainProcessor(settings, host),
}
