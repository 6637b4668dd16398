import {
  addedHarmonicSteps,
  clippedRangeSteps,
  detectorLevelSteps,
  hasSibilantBand,
  integratedLoudnessSteps,
  longTermSpectrumSteps,
  loudnessOverTimeSteps,
  measureSteps,
  partOf,
  pausesSteps,
  pausesWithin,
  peakPyramidSteps,
  reductionSummary,
  type Sound,
  type Steps,
  sibilantEventSteps,
  sibilantLevelSteps,
  sibilantsWithin,
  sineAsLoudDbfs,
  subBlockEnergySteps,
  traceWithin,
} from '../../core'
import { type SoundAddress, wholeOf } from '../address'
import { type FactName, type FactValues, lastAndFront } from './fact-values'

/** What facts are worked out with. */
export interface FactTools {
  /** The take that everything is about. */
  readonly take: Sound
  /** The sound itself, aligned with the take and as long, or the range of it that the address names. */
  sound(address: SoundAddress): Steps<Sound>
  /** Another fact, worked out where it is not known. */
  fact<Name extends FactName>(address: SoundAddress, name: Name): Steps<FactValues[Name]>
  /** The gain of the last stage along the take, all of it. */
  trace(address: SoundAddress): Steps<FactValues['trace']>
}

type FactTable = {
  readonly [Name in FactName]: (address: SoundAddress, tools: FactTools) => Steps<FactValues[Name]>
}

/**
 * Segments of the average spectrum: all of them in takes of up to a minute; of longer ones so many, spread evenly,
 * that they still cover more than half of four minutes.
 */
const MOST_SEGMENTS = 400

/** Between two points of the loudness lane. */
const HOP_SECONDS = 0.1

/** How each fact is worked out. A new fact is its line here and its name in `FactValues`. */
export const facts: FactTable = {
  *places(address, tools) {
    const { range } = address
    if (range) {
      const { pauses, sibilants } = yield* tools.fact(wholeOf(address), 'places')
      const { sampleRate } = tools.take
      return {
        pauses: pauses && pausesWithin(pauses, range, sampleRate),
        sibilants: sibilantsWithin(sibilants, range, sampleRate),
      }
    }
    const take = yield* tools.sound({ ...address, stages: [] })
    const pauses = yield* partOf(pausesSteps(take), 0, 0.2)
    const sibilants = hasSibilantBand(take) ? yield* partOf(sibilantEventSteps(take), 0.2, 1) : []
    return { pauses, sibilants }
  },
  *clipped(address, tools) {
    const { clippedSamples } = yield* partOf(tools.fact(address, 'measures'), 0, 0.9)
    // Mostly there is none, and the sound need not be gone through once more.
    if (clippedSamples === 0) return []
    return yield* partOf(clippedRangeSteps(yield* tools.sound(address)), 0.9, 1)
  },
  *energies(address, tools) {
    return yield* subBlockEnergySteps(yield* tools.sound(address))
  },
  *integratedLufs(address, tools) {
    const energies = yield* partOf(tools.fact(address, 'energies'), 0, 0.9)
    return yield* integratedLoudnessSteps(yield* tools.sound(address), energies)
  },
  *measures(address, tools) {
    const places = yield* tools.fact(address, 'places')
    const energies = yield* tools.fact(address, 'energies')
    return yield* measureSteps(yield* tools.sound(address), { energies, ...places })
  },
  *loudness(address, tools) {
    const energies = yield* tools.fact(address, 'energies')
    return yield* loudnessOverTimeSteps(yield* tools.sound(address), HOP_SECONDS, energies)
  },
  *peaks(address, tools) {
    return yield* peakPyramidSteps(yield* tools.sound(address))
  },
  *spectrum(address, tools) {
    return yield* longTermSpectrumSteps(yield* tools.sound(address), { mostSegments: MOST_SEGMENTS })
  },
  *trace(address, tools) {
    const { range } = address
    if (!range) return yield* tools.trace(address)
    const whole = yield* tools.fact(wholeOf(address), 'trace')
    return whole && traceWithin(whole, range)
  },
  *reduction(address, tools) {
    const trace = yield* tools.fact(address, 'trace')
    return trace && reductionSummary(trace)
  },
  *detectorLevel(address, tools) {
    const found = lastAndFront(address.stages)
    if (!found) return null
    const sound = yield* partOf(tools.sound({ ...address, stages: found.front }), 0, 0.7)
    return yield* partOf(detectorLevelSteps(sound, found.last), 0.7, 1)
  },
  *sibilantLevels(address, tools) {
    const level = yield* partOf(tools.fact(address, 'detectorLevel'), 0, 0.8)
    if (!level) return null
    const { sibilants } = yield* tools.fact(address, 'places')
    const front = lastAndFront(address.stages)?.front ?? []
    const sound = yield* tools.sound({ ...address, stages: front })
    return yield* partOf(sibilantLevelSteps(sound, level, sibilants), 0.8, 1)
  },
  *addedHarmonics(address, tools) {
    const found = lastAndFront(address.stages)
    if (!found) return null
    const lufs = yield* partOf(tools.fact({ ...address, stages: found.front }, 'integratedLufs'), 0, 0.9)
    if (lufs === null) return null
    const { sampleRate, channels } = tools.take
    const inputDbfs = sineAsLoudDbfs(lufs, channels.length)
    return yield* partOf(addedHarmonicSteps(found.last, inputDbfs, sampleRate), 0.9, 1)
  },
}
