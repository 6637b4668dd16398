import type { NumberParameter } from '../../core'
import { DEFAULT_ROUNDS, FEWEST_ROUNDS, MOST_ROUNDS } from '../../session/trials/trial-record'

/** Number of rounds in a trial. */
export const roundsParameter: NumberParameter = {
  type: 'number',
  label: 'Rounds',
  unit: '',
  min: FEWEST_ROUNDS,
  max: MOST_ROUNDS,
  default: DEFAULT_ROUNDS,
  scale: 'linear',
  step: 1,
  digits: 0,
  help: 'More rounds can tell smaller differences from guessing, but are tiring.',
}
