import type { NumberParameter } from './parameter'

/** Level in dBFS from which on a gain computer holds back. */
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
    help: 'Width around the threshold over which holding sets in gradually; 0 is a sharp corner.',
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
    help: 'Time to cover 63 % of the way to more reduction.',
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
    help: 'Time to cover 63 % of the way back to less reduction.',
  }
}

/** Share of what is processed in the output, 0 to 1. */
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

/** A gain in dB from `leastDb` to `mostDb`, at first 0. */
export function gainParameter(label: string, help: string, leastDb: number, mostDb: number): NumberParameter {
  return {
    type: 'number',
    label,
    unit: 'dB',
    min: leastDb,
    max: mostDb,
    default: 0,
    scale: 'linear',
    step: 0.1,
    digits: 1,
    help,
  }
}
