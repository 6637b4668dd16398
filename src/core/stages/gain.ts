import { dbToGain } from '../dsp/decibels'
import { Ramp } from '../dsp/ramp'
import { plain } from './describe'
import { gainParameter } from './shared-parameters'
import {
  type Processor,
  type ProcessorHost,
  type StageDefinition,
  settingFadeFrames,
} from './stage-definition'

/** Settings of the gain stage. */
export interface GainSettings {
  readonly gainDb: number
}

class GainProcessor implements Processor<GainSettings> {
  readonly latencyFrames = 0
  private readonly gain: Ramp
  private readonly rampFrames: number
  private started = false

  constructor(settings: GainSettings, host: ProcessorHost) {
    this.gain = new Ramp(dbToGain(settings.gainDb))
    this.rampFrames = settingFadeFrames(host)
  }

  set({ gainDb }: GainSettings): void {
    this.gain.goTo(dbToGain(gainDb), this.started ? this.rampFrames : 0)
  }

  process(channels: readonly Float32Array[], frames: number): void {
    this.started = true
    const { gain } = this
    const ramped = Math.min(gain.left, frames)
    const settled = gain.at(ramped)
    for (let c = 0; c < channels.length; c++) {
      const samples = channels[c]
      if (!samples) continue
      for (let n = 0; n < ramped; n++) samples[n] = (samples[n] ?? 0) * gain.at(n)
      if (settled === 1) continue
      for (let n = ramped; n < frames; n++) samples[n] = (samples[n] ?? 0) * settled
    }
    gain.pass(frames)
  }

  reset(): void {
    this.gain.finish()
    this.started = false
  }
}

/** Louder or quieter, nothing else. */
export const gain: StageDefinition<GainSettings> = {
  label: 'Gain',
  purpose: 'Makes everything louder or quieter by the same amount.',
  parameters: {
    gainDb: gainParameter('Gain', 'How much louder (+) or quieter (-) the sound leaves this stage.', -60, 24),
  },
  reducesGain: false,
  createProcessor: (settings, host) => new GainProcessor(settings, host),
  magnitudeDb: ({ gainDb }, frequenciesHz) => new Float64Array(frequenciesHz.length).fill(gainDb),
  describe: ({ gainDb }) =>
    gainDb === 0
      ? 'Changes nothing'
      : `${gainDb > 0 ? 'Raises' : 'Lowers'} all by ${plain(Math.abs(gainDb), 1)} dB`,
}
