import { chainOf, chainToJson, MAX_STAGES, type StageDoc, stageDefinitions } from '../../core'
import { type ChainEdit, freeId } from './chain-edits'

/** Text that was to be a stage, and is not. Its message is made to be shown. */
export class StageTextError extends Error {
  override readonly name = 'StageTextError'

  constructor(
    readonly code: 'not-settings' | 'no-stage' | 'not-allowed',
    message: string,
  ) {
    super(message)
  }
}

/** A stage as text: a chain of it alone, so that the text is a chain file too. */
export function stageToText(stage: StageDoc): string {
  return chainToJson(chainOf([stage]))
}

/** Puts copies of stages right behind another, or at the end where that is not there; no more than fit. */
export function pasteStages(pasted: readonly StageDoc[], afterId: string | null): ChainEdit {
  return (chain) => {
    const room = MAX_STAGES - chain.stages.length
    if (room <= 0) return null
    const found = chain.stages.findIndex(({ id }) => id === afterId)
    const place = found < 0 ? chain.stages.length : found + 1
    const after = pasted.slice(0, room).reduce((grown, stage, n) => {
      const stages = [...grown.stages]
      stages.splice(place + n, 0, { ...stage, id: freeId(grown, stage.kind) })
      return chainOf(stages)
    }, chain)
    const names = pasted.slice(0, room).map(({ kind }) => stageDefinitions[kind].label.toLowerCase())
    return { chain: after, words: `paste ${names.join(', ')}` }
  }
}
