import type { NumberParameter } from './parameter'

/** Level in dBFS above which gain is reduced. */
export function thresholdParameter(defaultDb: number, help: string): NumberParameter {
  return {
    type: 'number',
    label: 'Threshold',
    unit: 'dBFS',
    min: -80,
    max: 0,
    default: defaultDb,
    scale: 'linear',
    step: 0.5,
    digits: 1,
    help,
  }
}

/** dB in for each dB out above the threshold, 1 to Infinity. */
export function ratioParameter(defaultRatio: number, help: string): NumberParameter {
  return {
    type: 'number',
    label: 'Ratio',
    unit: 'ratio',
    min: 1,
    max: Number.POSITIVE_INFINITY,
    default: defaultRatio,
    scale: 'reciprocal',
    step: 0.01,
    digits: 1,
    help,
  }
}

/** Full width of the quadratic knee around the threshold, dB. */
export function kneeParameter(defaultDb: number): NumberParameter {
  return {
    type: 'number',
    label: 'Knee',
    unit: 'dB',
    min: 0,
    max: 36,
    default: defaultDb,
    scale: 'linear',
    step: 0.5,
    digits: 1,
    help: 'Width around the threshold over which gain reduction sets in gradually; 0 is a sharp corner.',
  }
}

/** Time constant of growing reduction, ms. */
export function attackParameter(defaultMs: number): NumberParameter {
  return {
    type: 'number',
    label: 'Attack',
    unit: 'ms',
    min: 0.02,
    max: 200,
    default: defaultMs,
    scale: 'logarithmic',
    step: 0.01,
    digits: 2,
    help: 'Time to cover 63 % of the way to more gain reduction.',
  }
}

/** Time constant of falling reduction, ms. */
export function releaseParameter(defaultMs: number): NumberParameter {
  return {
    type: 'number',
    label: 'Release',
    unit: 'ms',
    min: 5,
    max: 2000,
    default: defaultMs,
    scale: 'logarithmic',
    step: 0.01,
    digits: 0,
    help: 'Time to cover 63 % of the way back to less gain reduction.',
  }
}

/** The longest lookahead that can be set, ms: hosts whose delay must not move while it is set reserve this much. */
export const MAX_LOOKAHEAD_MS = 10

/** Time by which the level is read ahead of the sound, ms. */
export const lookaheadParameter: NumberParameter = {
  type: 'number',
  label: 'Lookahead',
  unit: 'ms',
  min: 0,
  max: MAX_LOOKAHEAD_MS,
  default: 0,
  scale: 'linear',
  step: 0.1,
  digits: 1,
  minMeans: 'off',
  rare: true,
  help: 'How far ahead the level is read, so that the gain is down before a peak arrives.',
}

/** Share of the processed sound in the output, 0 (dry) to 1. */
export function mixParameter(help: string): NumberParameter {
  return {
    type: 'number',
    label: 'Mix',
    unit: '%',
    min: 0,
    max: 1,
    default: 1,
    scale: 'linear',
    step: 0.01,
    digits: 0,
    displayFactor: 100,
    help,
  }
}

/** A gain in dB from `minDb` to `maxDb`, 0 by default. */
export function gainParameter(label: string, help: string, minDb: number, maxDb: number): NumberParameter {
  return {
    type: 'number',
    label,
    unit: 'dB',
    min: minDb,
    max: maxDb,
    default: 0,
    scale: 'linear',
    step: 0.1,
    digits: 1,
    help,
  }
}
