import type { RefObject } from 'react'
import { useChain } from '../../context/app-context'
import { StageActions } from './stage-actions'
import { VersionChip } from './version-chip'

export interface ChainToolsProps {
  /** The cards. */
  readonly list: RefObject<HTMLOListElement | null>
  /** The button that adds a stage. */
  readonly adder: RefObject<HTMLButtonElement | null>
  announce(text: string): void
}

/** What can be done with the place of the selected stage, and the stored versions of the chain. */
export function ChainTools({ list, adder, announce }: ChainToolsProps) {
  const stages = useChain((state) => state.chain.stages)
  const selectedId = useChain((state) => state.selectedId)
  const index = stages.findIndex(({ id }) => id === selectedId)
  const selected = stages[index]
  return (
    <>
      {selected && (
        <StageActions
          stage={selected}
          index={index}
          count={stages.length}
          list={list}
          adder={adder}
          announce={announce}
        />
      )}
      <VersionChip of="a" announce={announce} />
      <VersionChip of="b" announce={announce} />
    </>
  )
}
