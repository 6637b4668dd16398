import { describe, it } from 'vitest'
import { measure } from '../../src/core/measure'
import { within } from '../core/measure/loudness-oracle'
import { repeated, type Stretch, stereoTone } from '../setup/signals'

/** EBU Tech 3342 (2023), Table 1: stretches of 20 s; every case allows +-1 LU. */
const TOLERANCE_LU = 1

const cases: [number, number[], number][] = [
  [1, [-20, -30], 10],
  [2, [-20, -15], 5],
  [3, [-40, -20], 20],
  [4, [-50, -35, -20, -35, -50], 15],
]

describe('EBU Tech 3342, Table 1', () => {
  it.each(cases)('case %i: levels %j have a range of %d LU, heard once or twice', (_, levels, expected) => {
    const sound = stereoTone(
      48_000,
      levels.map((level): Stretch => [20, level]),
    )
    within(measure(sound).loudnessRangeLu, expected, TOLERANCE_LU)
    within(measure(repeated(sound, 2)).loudnessRangeLu, expected, TOLERANCE_LU)
  })
})
