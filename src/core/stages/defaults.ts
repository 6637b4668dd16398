import { type SettingsByKind, type StageDoc, type StageKind, stageDefinitions } from './index'
import { defaultSettings } from './parameter-defaults'

/**
 * A stage of the given kind, switched on, at its defaults.
 * @param id unique in the chain it is for; the kind's own name unless said otherwise
 */
export function defaultStage<Kind extends StageKind>(kind: Kind, id: string = kind): StageDoc<Kind> {
  const settings: SettingsByKind[Kind] = defaultSettings(stageDefinitions[kind].parameters)
  return { id, kind, on: true, settings }
}
