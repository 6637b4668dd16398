import { useEffect } from 'react'
import { useBench, useChain, useListen } from '../bench-context'
import { Choice } from './choice'
import { switchScope } from './switch-scope'

/** What is compared with its own absence: the whole chain, or the stage at hand. */
export function ScopeChoice() {
  const bench = useBench()
  const { chain, listening } = bench
  const kind = useListen(({ scope }) => scope.kind)
  const comparedId = useListen(({ scope }) => (scope.kind === 'chain' ? null : scope.stageId))
  const selectedId = useChain((state) => state.selectedId)

  // "This stage" is the one at hand, whichever that becomes.
  useEffect(() => {
    if (comparedId === null || comparedId === selectedId) return
    const stageId = chain.getState().selectedId
    listening.setScope(stageId === null ? { kind: 'chain' } : { kind: 'stage', stageId })
  }, [chain, listening, comparedId, selectedId])

  return (
    <Choice
      legend="What is compared"
      value={kind === 'chain' ? 'chain' : 'part'}
      options={[
        { value: 'chain', label: 'the whole chain' },
        { value: 'part', label: kind === 'band' ? 'this band' : 'this stage' },
      ]}
      onChange={(chosen) => switchScope(bench, chosen)}
    />
  )
}
