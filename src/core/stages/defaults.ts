import { type SettingsByKind, type StageDoc, type StageKind, stageDefinitions } from './index'
import type { ParameterTable } from './parameter'

/** Settings with every parameter at its default. */
export function defaultSettings<Settings extends object>(parameters: ParameterTable<Settings>): Settings {
  const rows: [string, { readonly default: unknown }][] = Object.entries(parameters)
  // A table has a row for every key of its settings, with a default of that key's type; a loop can't show it.
  return Object.fromEntries(rows.map(([key, row]) => [key, row.default])) as Settings
}

/**
 * A stage of the given kind, switched on, at its defaults.
 * @param id unique in the chain it is for; the kind's own name unless said otherwise
 */
export function defaultStage<Kind extends StageKind>(kind: Kind, id: string = kind): StageDoc<Kind> {
  const settings: SettingsByKind[Kind] = defaultSettings(stageDefinitions[kind].parameters)
  return { id, kind, on: true, settings }
}
