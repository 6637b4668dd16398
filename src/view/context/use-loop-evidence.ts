import type { EvidenceState } from '../../session/evidence-store'
import { sameRange } from '../../session/follow-loop'
import { printTime } from '../words/time-text'
import { useEvidence, useListen, useTake } from './app-context'

/** What is known over the loop that is set; null without one, and while nothing is known of it. */
export function useLoopEvidence(): EvidenceState['loop'] {
  const range = useListen((state) => state.loop)
  const loop = useEvidence((state) => state.loop)
  return range && sameRange(loop?.range, range) ? loop : null
}

/** What figures and spectra are of: "whole take", "loop 0:12.5–0:18.0", or the take while the loop's are worked out. */
export function useMeasuredRange(): string {
  const range = useListen((state) => state.loop)
  const known = useLoopEvidence()
  const isComing = useEvidence((state) => state.isLoopWorking || state.working !== null)
  const sampleRate = useTake((state) => state.take?.sound.sampleRate ?? 0)
  if (range && known) return `loop ${printTime(range.from / sampleRate)}–${printTime(range.to / sampleRate)}`
  return range && isComing ? 'whole take; analysing loop' : 'whole take'
}
