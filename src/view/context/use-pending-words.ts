import { useEvidence, useTake } from './app-context'

/** What stands in the place of a figure that is not known: that it is to come, or that it is not. */
export function usePendingWords(): '…' | 'not known' {
  const isLoading = useTake(({ loading }) => loading !== null)
  const isWorking = useEvidence(({ working }) => working !== null)
  return isLoading || isWorking ? '…' : 'not known'
}
