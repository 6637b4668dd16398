import { bandsOf, numberedBand, numberedStage, type Scope } from '../../core'
import { printedKey } from '../actions/key-table'
import { useApp, useChain, useListen } from '../context/app-context'
import { Choice } from '../controls/choice'
import { Fold } from './fold'

type ScopeKind = Scope['kind']

interface ScopeOption {
  readonly value: ScopeKind
  readonly label: string
  readonly title?: string | undefined
  readonly disabled?: boolean
}

/**
 * What is compared: the whole chain, the selected stage or a band of it, each with its bypass; or the stored
 * versions, once there are any.
 */
export function ScopeChoice() {
  const { comparing } = useApp()
  const scope = useListen((state) => state.scope)
  const { kind } = scope
  const index = useChain(({ chain, selectedId }) => chain.stages.findIndex(({ id }) => id === selectedId))
  const stageKind = useChain(({ chain }) => chain.stages[index]?.kind ?? null)
  const hasBands = useChain(({ chain: { stages } }) => {
    const stage = stages[index]
    return stage !== undefined && (bandsOf(stage)?.length ?? 0) > 0
  })
  const hasStored = useChain(({ snapshots: { a, b } }) => a !== null || b !== null)
  const options: ScopeOption[] = [
    { value: 'chain', label: 'whole chain' },
    {
      value: 'stage',
      label: stageKind ? `stage ${index + 1}` : 'one stage',
      title: stageKind ? numberedStage(index, stageKind) : undefined,
      disabled: !stageKind,
    },
    {
      value: 'band',
      label: scope.kind === 'band' ? `band ${numberedBand(index, scope.bandIndex)}` : 'one band',
      disabled: !hasBands,
    },
  ]
  if (hasStored) options.push({ value: 'snapshots', label: 'versions' })
  return (
    <Fold label={options.find(({ value }) => value === kind)?.label ?? ''} title="What is compared">
      <Choice
        legend="compare"
        showsLegend
        keyHint={printedKey('scope')}
        value={kind}
        options={options}
        onChange={(chosen) => comparing.compare(chosen)}
      />
    </Fold>
  )
}
