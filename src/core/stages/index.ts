import { compressor } from './compressor/definition'
import { deEsser } from './de-esser/definition'
import { equaliser } from './equaliser/definition'
import { gain } from './gain/definition'
import { saturator } from './saturator/definition'
import type { StageDefinition } from './stage-definition'

/** The table of kinds of stage, as the page knows them. A new kind is its folder, one line here and one in processors.ts. */
const kinds = {
  equaliser,
  compressor,
  'de-esser': deEsser,
  saturator,
  gain,
}

type SettingsIn<Definition> = Definition extends StageDefinition<infer Settings> ? Settings : never

/** Settings of each kind of stage. */
export type SettingsByKind = { readonly [Kind in keyof typeof kinds]: SettingsIn<(typeof kinds)[Kind]> }

export type StageKind = keyof SettingsByKind

/** Definitions by kind, typed so that a stage and its definition are known to belong together. */
export const stageDefinitions: { readonly [Kind in StageKind]: StageDefinition<SettingsByKind[Kind]> } = kinds

/** Whether `name` is a kind of stage. */
export function isStageKind(name: string): name is StageKind {
  return Object.hasOwn(kinds, name)
}

/** All kinds, in the order in which they are offered. */
export const stageKinds: readonly StageKind[] = Object.keys(kinds).filter(isStageKind)

/** One stage of a chain, as plain JSON. Its settings are those of its kind. */
export type StageDoc<Kind extends StageKind = StageKind> = {
  readonly [K in Kind]: {
    /** Unique in its chain. */
    readonly id: string
    readonly kind: K
    readonly on: boolean
    readonly settings: SettingsByKind[K]
  }
}[Kind]
