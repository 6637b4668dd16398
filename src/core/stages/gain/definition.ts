import { plainInSentence } from '../number-format'
import { gainParameter } from '../shared-parameters'
import type { StageDefinition } from '../stage-definition'

/** Settings of the gain stage. */
export interface GainSettings {
  readonly gainDb: number
}

/** The gain stage. */
export const gain: StageDefinition<GainSettings> = {
  label: 'Gain',
  purpose: 'Makes everything louder or quieter by the same amount.',
  parameters: {
    gainDb: gainParameter('Gain', 'How much louder (+) or quieter (-) the sound leaves this stage.', -60, 24),
  },
  reducesGain: false,
  magnitudeDb: ({ gainDb }, frequenciesHz) => new Float64Array(frequenciesHz.length).fill(gainDb),
  describe: ({ gainDb }) =>
    gainDb === 0
      ? 'Changes nothing'
      : `${gainDb > 0 ? 'Raises' : 'Lowers'} the level by ${plainInSentence(Math.abs(gainDb), 1)} dB`,
  latencyFrames: () => 0,
  idleSettings: null,
  picture: () => ({ kind: 'level-change' }),
  items: null,
  bands: null,
  detector: null,
  makeup: null,
}
