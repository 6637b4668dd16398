import { useStore } from 'zustand'
import { comparisonOf } from '../../core'
import { type TrialRefusal, trialRefusal } from '../../session/trials/trial-refusal'
import type { TrialState } from '../../session/trials/trial-store'
import { useApp, useChain, useEvidence, useListen, useTake } from '../context/app-context'

/** Part of the state of blind trials. */
export function useTrial<Part>(select: (state: TrialState) => Part): Part {
  return useStore(useApp().trial, select)
}

/** Why no trial of the current comparison can be started, or null. */
export function useTrialRefusal(): TrialRefusal | null {
  const chain = useChain((state) => state.chain)
  const scope = useListen((state) => state.scope)
  const listeningPoint = useListen((state) => state.listeningPoint)
  const take = useTake((state) => state.take)
  const evidence = useEvidence((state) => state)
  return trialRefusal({ take }, evidence, comparisonOf(chain, scope, listeningPoint))
}
