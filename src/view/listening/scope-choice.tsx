import type { Scope } from '../../core'
import { printedKey } from '../actions/key-table'
import { useApp, useChain, useListen } from '../context/app-context'
import { Choice } from '../controls/choice'

type ScopeKind = Scope['kind']

const scopes: readonly { readonly value: ScopeKind; readonly label: string }[] = [
  { value: 'chain', label: 'the whole chain' },
  { value: 'stage', label: 'this stage' },
]

/**
 * What is compared: the whole chain, the selected stage or a band of it, each with its bypass; or the stored
 * versions, once there are any.
 */
export function ScopeChoice() {
  const { comparing } = useApp()
  const kind = useListen(({ scope }) => scope.kind)
  const hasStored = useChain(({ snapshots: { a, b } }) => a !== null || b !== null)
  const options = [
    ...scopes,
    ...(kind === 'band' ? [{ value: 'band', label: 'this band' } as const] : []),
    ...(hasStored ? [{ value: 'snapshots', label: 'stored versions' } as const] : []),
  ]
  return (
    <Choice
      legend="What is compared"
      keyHint={printedKey('scope')}
      value={kind}
      options={options}
      onChange={(chosen) => {
        if (chosen !== 'band') comparing.compare(chosen)
      }}
    />
  )
}
