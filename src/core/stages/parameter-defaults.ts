import type { ParameterTable } from './parameter'

/** Settings with every parameter at its default. */
export function defaultSettings<Settings extends object>(parameters: ParameterTable<Settings>): Settings {
  const rows: [string, { readonly default: unknown }][] = Object.entries(parameters)
  // A table has a row for every key of its settings, with a default of that key's type; a loop can't show it.
  return Object.fromEntries(rows.map(([key, row]) => [key, row.default])) as Settings
}
