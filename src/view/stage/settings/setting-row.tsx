import { memo } from 'react'
import type { Parameter } from '../../../core'
import { ChoiceRow } from '../../controls/choice-row'
import { NumberRow } from '../../controls/number-row'
import { Switch } from '../../controls/switch'
import { Told } from './told'

interface SettingRowProps {
  readonly parameter: Parameter
  readonly value: unknown
  /** What the setting belongs to, where that is not the stage itself. */
  readonly owner?: string
  onChange(value: number | string | boolean): void
  onRest(): void
  /** Told what the setting does when it is pointed at or gets the focus. */
  onHelp(help: string): void
}

/** Label and control of one setting; rendered anew when its value changes, if it is given the same functions. */
export const SettingRow = memo(({ parameter, value, owner, onChange, onRest, onHelp }: SettingRowProps) => {
  return (
    <Told help={parameter.help} onHelp={onHelp}>
      {parameter.type === 'number' && typeof value === 'number' && (
        <NumberRow
          parameter={parameter}
          value={value}
          onChange={onChange}
          onRest={onRest}
          {...(owner !== undefined && { owner })}
        />
      )}
      {parameter.type === 'choice' && (
        <ChoiceRow
          parameter={parameter}
          value={value}
          {...(owner !== undefined && { owner })}
          onChange={(chosen) => {
            onChange(chosen)
            onRest()
          }}
        />
      )}
      {parameter.type === 'switch' && (
        <Switch
          on={value === true}
          label={parameter.label}
          onChange={(on) => {
            onChange(on)
            onRest()
          }}
        />
      )}
    </Told>
  )
})
