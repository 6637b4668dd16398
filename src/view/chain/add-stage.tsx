import { memo, type RefObject } from 'react'
import { MAX_STAGES, stageDefinitions, stageKinds } from '../../core'
import { addStage } from '../../session/chain/chain-edits'
import { useApp, useChain } from '../context/app-context'
import { Menu } from '../controls/menu'
import { MenuEntry } from '../controls/menu-entry'

interface AddStageProps {
  /** Holds the button that opens the list. */
  readonly opener: RefObject<HTMLButtonElement | null>
  onAdded(announcement: string): void
}

/** Offers every kind of stage with what it is for. */
export const AddStage = memo(({ opener, onAdded }: AddStageProps) => {
  const { chain } = useApp()
  const count = useChain((state) => state.chain.stages.length)
  const full = count >= MAX_STAGES
  return (
    <Menu
      label="+ Add stage"
      name={full ? `No more than ${MAX_STAGES} stages` : undefined}
      disabled={full}
      opener={opener}
    >
      {(close) =>
        stageKinds.map((kind) => (
          <MenuEntry
            key={kind}
            label={stageDefinitions[kind].label}
            purpose={stageDefinitions[kind].purpose}
            onChoose={() => {
              chain.getState().edit(addStage(kind))
              onAdded(`${stageDefinitions[kind].label} added, position ${count + 1} of ${count + 1}`)
              close()
            }}
          />
        ))
      }
    </Menu>
  )
})
