import { useEvidence, useTake } from './app-context'

/** Shown instead of a figure that is not known: “…” while it is being worked out. */
export function usePendingWords(): '…' | 'not known' {
  const isLoading = useTake(({ loading }) => loading !== null)
  const isWorking = useEvidence(({ working }) => working !== null)
  return isLoading || isWorking ? '…' : 'not known'
}
