import { ChainError, parseChain, type StageDoc } from '../../core'
import { StageTextError } from './stage-text'

/**
 * The stages in a text that `stageToText`, or a saved chain, has made.
 * @throws StageTextError when it is anything else
 */
export function stagesFromText(text: string): readonly StageDoc[] {
  const { stages } = chainFromText(text)
  if (stages.length === 0)
    throw new StageTextError('no-stage', 'The clipboard holds a chain without a stage. Copy a stage first.')
  return stages
}

function chainFromText(text: string) {
  try {
    return parseChain(JSON.parse(text))
  } catch (error) {
    if (error instanceof SyntaxError)
      throw new StageTextError(
        'not-settings',
        'The clipboard holds no stage. Copy a stage first, then paste it.',
      )
    if (error instanceof ChainError)
      throw new StageTextError('not-allowed', `What the clipboard holds cannot be a stage. ${error.message}`)
    throw error
  }
}
