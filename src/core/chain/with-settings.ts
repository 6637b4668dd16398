import { type StageDoc, stageDefinitions } from '../stages'
import type { Parameter } from '../stages/parameter'
import { ChainError } from './chain-error'

/**
 * A stage with other settings.
 * @param path of the stage, for the message
 * @throws ChainError when its table does not allow them
 */
export function withSettings(stage: StageDoc, settings: object, path: string): StageDoc {
  checkSettings(stageDefinitions[stage.kind].parameters, settings, `${path}.settings`)
  // Checked against the table that the types are made from, which is more than a loop over it can show.
  return { ...stage, settings } as StageDoc
}

/**
 * Checks settings against their table of parameters: what `parseChain` checks of a document, without the schemas for
 * it, since what the page itself sets has the right shape.
 *
 * @param path of the settings, for the message
 * @throws ChainError naming the setting and what was expected there
 */
function checkSettings(parameters: object, settings: object, path: string): void {
  const rows = new Map<string, Parameter>(Object.entries(parameters))
  const values = new Map<string, unknown>(Object.entries(settings))
  for (const key of [...values.keys(), ...rows.keys()]) {
    const parameter = rows.get(key)
    const place = `${path}.${key}`
    if (!parameter) throw new ChainError(place, 'no such setting', String(values.get(key)))
    checkValue(parameter, values.get(key), place)
  }
}

function checkValue(parameter: Parameter, value: unknown, path: string): void {
  switch (parameter.type) {
    case 'number': {
      const { min, max } = parameter
      if (!(typeof value === 'number' && value >= min && value <= max))
        throw new ChainError(path, `a number from ${min} to ${max}`, String(value))
      return
    }
    case 'choice':
      if (!parameter.options.some((option) => option.value === value))
        throw new ChainError(path, 'one of its options', String(value))
      return
    case 'switch':
      if (typeof value !== 'boolean') throw new ChainError(path, 'true or false', String(value))
      return
    case 'list':
      if (!Array.isArray(value) || value.length > parameter.maxItems)
        throw new ChainError(path, `a list of at most ${parameter.maxItems}`, typeof value)
      value.forEach((item: object, index) => {
        checkSettings(parameter.item, item, `${path}[${index}]`)
      })
  }
}
