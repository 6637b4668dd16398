import type { NumberParameter } from '../../core'

/** Level of the backing against its file. */
export const backingLevelParameter: NumberParameter = {
  type: 'number',
  label: 'Level',
  unit: 'dB',
  min: -40,
  max: 12,
  default: 0,
  scale: 'linear',
  step: 0.5,
  digits: 1,
  help: 'Level of the backing under the voice.',
}

/** How much later the backing starts than the take: coded files often begin with some silence. */
export const backingOffsetParameter: NumberParameter = {
  type: 'number',
  label: 'Offset',
  unit: 'ms',
  min: -200,
  max: 200,
  default: 0,
  scale: 'linear',
  step: 1,
  digits: 0,
  help: 'Moves the backing later (or, below 0, earlier) until it lines up with the voice.',
}

/** The monitor volume, separate from the chain: as quiet as -60 dB, never above the file's own level. */
export const monitorParameter: NumberParameter = {
  type: 'number',
  label: 'Monitor',
  unit: 'dB',
  min: -60,
  max: 0,
  default: -18,
  scale: 'linear',
  step: 1,
  digits: 0,
  help: 'Volume at your ears. It does not affect the delivered file.',
}
