import { useEffect } from 'react'
import type { Scope } from '../../core'
import { useBench, useChain, useListen } from '../bench-context'
import { Choice } from './choice'
import { switchScope } from './switch-scope'

type ScopeKind = Scope['kind']

const scopes: readonly { readonly value: ScopeKind; readonly label: string }[] = [
  { value: 'chain', label: 'the whole chain' },
  { value: 'stage', label: 'this stage' },
]

/** What is compared with its own absence: the whole chain, the stage at hand, or a band of it that was chosen there. */
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
      value={kind}
      options={kind === 'band' ? [...scopes, { value: 'band', label: 'this band' }] : scopes}
      onChange={(chosen) => chosen !== 'band' && switchScope(bench, chosen)}
    />
  )
}
