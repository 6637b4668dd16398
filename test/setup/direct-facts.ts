import type { FactName, FactValues } from '../../src/compute/facts/fact-values'
import {
  chainOf,
  clippedRanges,
  finished,
  hasSibilantBand,
  integratedLoudness,
  longTermSpectrum,
  loudnessOverTime,
  measure,
  pausesOf,
  peakPyramid,
  reductionSummary,
  renderChain,
  type Sound,
  type StageDoc,
  sibilantEvents,
  subBlockEnergySteps,
  type Trace,
} from '../../src/core'

/** How each fact of a take behind stages is found without the compute layer: from a render of its own. */
const direct: { [Name in FactName]: (take: Sound, stages: readonly StageDoc[]) => FactValues[Name] } = {
  places: (take) => ({
    pauses: pausesOf(take),
    sibilants: hasSibilantBand(take) ? sibilantEvents(take) : [],
  }),
  clipped: (take, stages) => clippedRanges(rendered(take, stages)),
  energies: (take, stages) => finished(subBlockEnergySteps(rendered(take, stages))),
  integratedLufs: (take, stages) => integratedLoudness(rendered(take, stages)),
  measures: (take, stages) => measure(rendered(take, stages), direct.places(take, [])),
  loudness: (take, stages) => loudnessOverTime(rendered(take, stages)),
  peaks: (take, stages) => peakPyramid(rendered(take, stages)),
  spectrum: (take, stages) => longTermSpectrum(rendered(take, stages)),
  trace: traceOf,
  reduction: (take, stages) => {
    const trace = traceOf(take, stages)
    return trace && reductionSummary(trace)
  },
}

/** A fact from a render of its own, through the stages that are on; for takes of up to a minute. */
export function directFact<Name extends FactName>(
  take: Sound,
  stages: readonly StageDoc[],
  name: Name,
): FactValues[Name] {
  return direct[name](
    take,
    stages.filter(({ on }) => on),
  )
}

/** Every fact there is. */
export const factNames: readonly FactName[] = [
  'places',
  'clipped',
  'energies',
  'integratedLufs',
  'measures',
  'loudness',
  'peaks',
  'spectrum',
  'trace',
  'reduction',
]

function rendered(take: Sound, stages: readonly StageDoc[]): Sound {
  return renderChain(take, chainOf(stages)).sound
}

function traceOf(take: Sound, stages: readonly StageDoc[]): Trace | null {
  const last = stages.at(-1)
  return last ? (renderChain(take, chainOf(stages)).traces.get(last.id) ?? null) : null
}
