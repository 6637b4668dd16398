import type { ComponentType } from 'react'
import { type Parameter, stageDefinitions } from '../../core'
import { MatchMakeup } from './match-makeup'

interface SettingToolProps {
  readonly stageId: string
  onHelp(help: string): void
}

/** Settings that can be worked out as well as set, with what does it. */
export const settingTools: ReadonlyMap<Parameter, ComponentType<SettingToolProps>> = new Map([
  [stageDefinitions.compressor.parameters.makeupDb, MatchMakeup],
])
