import type { SideLoudness } from '../../src/compute/select/matching'
import { finished, integratedLoudness, type Sound, subBlockEnergySteps } from '../../src/core'

/** What matching goes by of a sound. */
export function sideLoudness(sound: Sound): SideLoudness {
  return { energies: finished(subBlockEnergySteps(sound)), integratedLufs: integratedLoudness(sound) }
}
