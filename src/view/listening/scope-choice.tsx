import { useEffect } from 'react'
import { useStore } from 'zustand'
import type { Scope } from '../../core'
import { useApp, useChain, useListen } from '../app-context'
import { Choice } from './choice'
import { switchScope } from './switch-scope'

type ScopeKind = Scope['kind']

const scopes: readonly { readonly value: ScopeKind; readonly label: string }[] = [
  { value: 'chain', label: 'the whole chain' },
  { value: 'stage', label: 'this stage' },
]

/**
 * What is compared: the whole chain, the stage at hand or a band of it that was chosen there, each with its own
 * absence; or the versions that were kept, once there are any.
 */
export function ScopeChoice() {
  const app = useApp()
  const { chain, listening } = app
  const kind = useListen(({ scope }) => scope.kind)
  const comparedId = useListen(({ scope }) => ('stageId' in scope ? scope.stageId : null))
  const hasKept = useStore(app.kept, ({ a, b }) => a !== null || b !== null)
  const selectedId = useChain((state) => state.selectedId)

  // "This stage" is the one at hand, whichever that becomes.
  useEffect(() => {
    if (comparedId === null || comparedId === selectedId) return
    const stageId = chain.getState().selectedId
    listening.setScope(stageId === null ? { kind: 'chain' } : { kind: 'stage', stageId })
  }, [chain, listening, comparedId, selectedId])

  const options = [
    ...scopes,
    ...(kind === 'band' ? [{ value: 'band', label: 'this band' } as const] : []),
    ...(hasKept ? [{ value: 'snapshots', label: 'what was kept' } as const] : []),
  ]
  return (
    <Choice
      legend="What is compared"
      keyHint="S"
      value={kind}
      options={options}
      onChange={(chosen) => {
        if (chosen === 'snapshots') app.keptVersions.compare()
        else if (chosen !== 'band') switchScope(app, chosen)
      }}
    />
  )
}
