import type { Evidence, SideEvidence } from '../../../src/compute/evidence'
import {
  comparisonOf,
  longTermSpectrum,
  loudnessOverTime,
  measure,
  peakPyramid,
  type Sound,
} from '../../../src/core'
import type { App } from '../../../src/session/app'

/** Evidence in which both sides measure as `sound` does, of the app's chain against its bypass. */
export function evidenceOf(app: App, sound: Sound): Evidence {
  const side: SideEvidence = {
    measures: measure(sound),
    loudness: loudnessOverTime(sound),
    peaks: peakPyramid(sound),
    spectrum: longTermSpectrum(sound),
  }
  return {
    bypassed: side,
    processed: side,
    stages: new Map(),
    matching: { bypassedDb: 0, processedDb: 0, measuredOver: 'take' },
    chains: comparisonOf(app.chain.getState().chain, { kind: 'chain' }),
  }
}
