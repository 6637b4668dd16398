import { MAX_STAGES, type StageDoc, stageDefinitions } from '../../core'
import { duplicateStage, resetStage } from '../../session/chain/chain-edits'
import { pasteStages, StageTextError, stageToText } from '../../session/chain/stage-text'
import { PartError } from '../../session/lazy-part'
import { stageReading } from '../../session/parts'
import { useApp, useChain } from '../context/app-context'
import styles from './stage-tools.module.css'

interface StageToolsProps {
  /** The selected stage; null while the chain is empty. */
  readonly stage: StageDoc | null
  /** Told what was done, or why it was not. */
  onNews(news: string): void
}

/** What can be done with all settings of a stage at once. */
export function StageTools({ stage, onNews }: StageToolsProps) {
  const { chain } = useApp()
  const full = useChain((state) => state.chain.stages.length >= MAX_STAGES)
  const name = stage ? stageDefinitions[stage.kind].label : ''
  const copy = async (copied: StageDoc) => {
    try {
      await navigator.clipboard.writeText(stageToText(copied))
      onNews(`${name} copied to the clipboard with all its settings, as text.`)
    } catch {
      onNews('The browser does not let this page write to the clipboard.')
    }
  }
  const paste = async () => {
    try {
      const text = await navigator.clipboard.readText()
      const { stagesFromText } = await stageReading.load()
      const pasted = stagesFromText(text)
      chain.getState().edit(pasteStages(pasted, chain.getState().selectedId))
      onNews('Pasted from the clipboard.')
    } catch (error) {
      const refused = 'The browser does not let this page read the clipboard.'
      onNews(error instanceof StageTextError || error instanceof PartError ? error.message : refused)
    }
  }
  return (
    <span className={styles.tools}>
      {stage && (
        <>
          <button
            type="button"
            aria-disabled={full}
            aria-label={`Duplicate ${name}`}
            onClick={() => chain.getState().edit(duplicateStage(stage.id))}
          >
            duplicate
          </button>
          <button type="button" aria-label={`Copy the settings of ${name}`} onClick={() => void copy(stage)}>
            copy
          </button>
        </>
      )}
      <button
        type="button"
        aria-disabled={full}
        aria-label="Paste a stage from the clipboard"
        title={stage ? `Adds the stage on the clipboard after ${name}` : undefined}
        onClick={() => !full && void paste()}
      >
        paste
      </button>
      {stage && (
        <button
          type="button"
          aria-label={`Reset ${name}`}
          onClick={() => chain.getState().edit(resetStage(stage.id))}
        >
          reset
        </button>
      )}
    </span>
  )
}
