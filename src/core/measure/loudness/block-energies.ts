import { frameCount, type Sound } from '../../sound/sound'
import { finished, STEP_FRAMES, type Steps } from '../../sound/steps'
import { MeasureError } from '../error'
import { type KWeighting, kWeighting } from './k-weighting'

/** Loudness is added up in sub-blocks of 10 ms: short enough for a maximum to be found wherever it lies. */
export const SUB_BLOCKS_PER_SECOND = 100

/** ITU-R BS.1770-5, Annex 1, Table 3, in the order L, R, C, Ls, Rs. */
const CHANNEL_WEIGHTS = [1, 1, 1, 1.41, 1.41]

/** Below this sum of squares a filter's state is set to 0, long before it can become subnormal. */
const FLUSHED_ENERGY = 1e-40

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
  const filter = kWeighting(sampleRate)
  const energies = new Float64Array(subBlockCount(frameCount(sound), sampleRate))
  const blocksInStep = Math.floor((STEP_FRAMES * SUB_BLOCKS_PER_SECOND) / sampleRate)
  for (const [c, samples] of channels.entries()) {
    const state = { s1: 0, s2: 0, t1: 0, t2: 0 }
    for (let from = 0; from < energies.length; from += blocksInStep) {
      const to = Math.min(energies.length, from + blocksInStep)
      addChannel(energies, samples, { from, to, weight: CHANNEL_WEIGHTS[c] ?? 0, sampleRate, filter, state })
      yield (c + to / energies.length) / channels.length
    }
  }
  return energies
}

/** Sub-blocks of one channel, and the filter that goes on where it stopped before them. */
interface Stretch {
  readonly from: number
  readonly to: number
  readonly weight: number
  readonly sampleRate: number
  readonly filter: KWeighting
  readonly state: { s1: number; s2: number; t1: number; t2: number }
}

/** Runs a stretch of one channel through the filter (transposed direct form II, both sections in one pass). */
function addChannel(
  energies: Float64Array,
  samples: Float32Array,
  { from, to, weight, sampleRate, filter, state }: Stretch,
): void {
  const { b0, b1, b2, a1, a2 } = filter.shelf
  const { b0: scale, a1: c1, a2: c2 } = filter.highPass
  // The high-pass's numerator is scale * (1, -2, 1): the scale is taken out of the loop as an energy.
  const energyWeight = weight * scale * scale
  let { s1, s2, t1, t2 } = state
  let frame = subBlockStart(from, sampleRate)
  for (let block = from; block < to; block++) {
    const end = subBlockStart(block + 1, sampleRate)
    let energy = 0
    for (; frame < end; frame++) {
      const x = samples[frame] ?? 0
      const shelved = b0 * x + s1
      s1 = b1 * x - a1 * shelved + s2
      s2 = b2 * x - a2 * shelved
      const weighted = shelved + t1
      t1 = t2 - 2 * shelved - c1 * weighted
      t2 = shelved - c2 * weighted
      energy += weighted * weighted
    }
    if (s1 * s1 + s2 * s2 < FLUSHED_ENERGY) s1 = s2 = 0
    if (t1 * t1 + t2 * t2 < FLUSHED_ENERGY) t1 = t2 = 0
    energies[block] = (energies[block] ?? 0) + energyWeight * energy
  }
  Object.assign(state, { s1, s2, t1, t2 })
}
