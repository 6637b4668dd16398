import { MAX_STAGES, numberedStage, type StageDoc, stageDefinitions } from '../../core'
import { duplicateStage, moveStage, removeStage, resetStage } from '../../session/chain/chain-edits'
import { pasteStages, StageTextError, stageToText } from '../../session/chain/stage-text'
import { PartError } from '../../session/lazy-part'
import { stageReading } from '../../session/parts'
import { useApp, useChain } from '../context/app-context'
import styles from './stage-menu-entries.module.css'

export interface StageMenuProps {
  /** The selected stage; null while the chain is empty. */
  readonly stage: StageDoc | null
  /** Position in the chain, from 0. */
  readonly index: number
  /** Told what was done, or why it was not. */
  onNews(news: string): void
}

interface StageMenuEntriesProps extends StageMenuProps {
  /** Folds the menu. */
  close(): void
}

interface Entry {
  readonly label: string
  /** For those who hear it by itself. */
  readonly name: string
  readonly disabled?: boolean
  act(): void
}

/** What can be done with the selected stage as a whole. */
export function StageMenuEntries({ stage, index, onNews, close }: StageMenuEntriesProps) {
  const { chain } = useApp()
  const count = useChain((state) => state.chain.stages.length)
  const isFull = count >= MAX_STAGES
  const edits = chain.getState()
  const paste: Entry = {
    label: 'Paste',
    name: 'Paste a stage from the clipboard',
    disabled: isFull,
    act: () => void pasteFromClipboard().then(onNews),
  }
  const pasteFromClipboard = async (): Promise<string> => {
    try {
      const text = await navigator.clipboard.readText()
      const { stagesFromText } = await stageReading.load()
      edits.edit(pasteStages(stagesFromText(text), chain.getState().selectedId))
      return 'Pasted from the clipboard.'
    } catch (error) {
      const isTold = error instanceof StageTextError || error instanceof PartError
      return isTold ? error.message : 'The browser does not let this page read the clipboard.'
    }
  }
  const entriesOf = (selected: StageDoc): readonly Entry[] => {
    const name = numberedStage(index, selected.kind)
    const { label } = stageDefinitions[selected.kind]
    const move = (to: number) => {
      edits.edit(moveStage(selected.id, to))
      onNews(`${label}, position ${to + 1} of ${count}`)
    }
    return [
      {
        label: 'Duplicate',
        name: `Duplicate ${name}`,
        disabled: isFull,
        act: () => edits.edit(duplicateStage(selected.id)),
      },
      {
        label: 'Copy',
        name: `Copy the settings of ${name}`,
        act: () =>
          void navigator.clipboard.writeText(stageToText(selected)).then(
            () => onNews(`${label} copied, as text.`),
            () => onNews('The browser does not let this page write to the clipboard.'),
          ),
      },
      paste,
      {
        label: 'Reset',
        name: `Reset ${name}`,
        act: () => {
          edits.edit(resetStage(selected.id))
          onNews(`${label} reset`)
        },
      },
      {
        label: 'Move earlier',
        name: `Move ${name} earlier`,
        disabled: index === 0,
        act: () => move(index - 1),
      },
      {
        label: 'Move later',
        name: `Move ${name} later`,
        disabled: index === count - 1,
        act: () => move(index + 1),
      },
      {
        label: 'Remove',
        name: `Remove ${name}`,
        act: () => {
          edits.edit(removeStage(selected.id))
          onNews(`${label} removed`)
        },
      },
    ]
  }
  return (stage ? entriesOf(stage) : [paste]).map(({ label, name, disabled = false, act }) => (
    <button
      key={label}
      type="button"
      className={styles.entry}
      aria-label={name}
      aria-disabled={disabled}
      onClick={() => {
        if (disabled) return
        close()
        act()
      }}
    >
      {label}
    </button>
  ))
}
