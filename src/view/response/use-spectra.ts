import type { Spectrum } from '../../core'
import { useEvidence } from '../context/app-context'
import { useLoopEvidence } from '../context/use-loop-evidence'

/** The spectra of both sides: over the loop where they are known, else over the whole take. Null before any. */
export function useSpectra(): { readonly bypassed: Spectrum; readonly processed: Spectrum } | null {
  const loop = useLoopEvidence()
  const evidence = useEvidence((state) => state.evidence)
  const of = loop ?? evidence
  return of && { bypassed: of.bypassed.spectrum, processed: of.processed.spectrum }
}
