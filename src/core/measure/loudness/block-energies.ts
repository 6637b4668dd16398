import { frameCount, type Sound } from '../../sound/sound'
import { finished, STEP_FRAMES, type Steps } from '../../sound/steps'
import { MeasureError } from '../error'
import { KWeightedEnergy } from './k-weighted-energy'

/** Loudness is added up in sub-blocks of 10 ms: short enough for a maximum to be found wherever it lies. */
export const SUB_BLOCKS_PER_SECOND = 100

/** ITU-R BS.1770-5, Annex 1, Table 3, in the order L, R, C, Ls, Rs. */
const CHANNEL_WEIGHTS = [1, 1, 1, 1.41, 1.41]

/**
 * First frame of sub-block `index`. Where 10 ms is not a whole number of frames each boundary is rounded by
 * itself, so that sub-blocks differ by at most one frame and never drift from true time.
 */
export function subBlockStart(index: number, sampleRate: number): number {
  return Math.round((index * sampleRate) / SUB_BLOCKS_PER_SECOND)
}

/** Number of sub-blocks that lie wholly within the first `frames` frames. */
export function subBlockCount(frames: number, sampleRate: number): number {
  const estimate = Math.floor((frames * SUB_BLOCKS_PER_SECOND) / sampleRate)
  return subBlockStart(estimate + 1, sampleRate) <= frames ? estimate + 1 : estimate
}

/**
 * K-weighted energy (sum of squares, channels weighted and added) of every whole 10 ms sub-block.
 * ITU-R BS.1770-5, Annex 1, equations 1 and 2.
 *
 * @param sound 1 to 5 channels, L R C Ls Rs (no low-frequency channel); 8 to 192 kHz
 * @throws MeasureError `channels` for more than 5 channels, `sample-rate` outside the range
 */
export function subBlockEnergies(sound: Sound): Float64Array {
  return finished(subBlockEnergySteps(sound))
}

/** {@link subBlockEnergies} in steps. */
export function* subBlockEnergySteps(sound: Sound): Steps<Float64Array> {
  const { channels, sampleRate } = sound
  if (channels.length > CHANNEL_WEIGHTS.length) {
    throw new MeasureError(
      'channels',
      `${channels.length} channels (expected at most ${CHANNEL_WEIGHTS.length})`,
    )
  }
  const weighted = new KWeightedEnergy(sampleRate, CHANNEL_WEIGHTS.slice(0, channels.length))
  const energies = new Float64Array(subBlockCount(frameCount(sound), sampleRate))
  const blocksInStep = Math.floor((STEP_FRAMES * SUB_BLOCKS_PER_SECOND) / sampleRate)
  for (const [c, samples] of channels.entries()) {
    for (let from = 0; from < energies.length; from += blocksInStep) {
      const to = Math.min(energies.length, from + blocksInStep)
      for (let block = from; block < to; block++) {
        const start = subBlockStart(block, sampleRate)
        const count = subBlockStart(block + 1, sampleRate) - start
        energies[block] = (energies[block] ?? 0) + weighted.next(c, samples, start, count)
      }
      yield (c + to / energies.length) / channels.length
    }
  }
  return energies
}
