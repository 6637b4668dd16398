import { memo } from 'react'
import type { Parameter } from '../../../core'
import { ChoiceRow } from '../../controls/choice-row'
import { NumberRow } from '../../controls/number-row'
import { Switch } from '../../controls/switch'

interface SettingRowProps {
  readonly parameter: Parameter
  readonly value: unknown
  /** What the setting belongs to, where that is not the stage itself. */
  readonly owner?: string
  /** What else is to be seen of it right now, in a word. */
  readonly note?: string | undefined
  onChange(value: number | string | boolean): void
  onRest(): void
}

/** Label and control of one setting; rendered anew when its value changes, if it is given the same functions. */
export const SettingRow = memo(({ parameter, value, owner, note, onChange, onRest }: SettingRowProps) => {
  const whose = owner !== undefined && { owner }
  const set = (chosen: number | string | boolean) => {
    onChange(chosen)
    onRest()
  }
  switch (parameter.type) {
    case 'number':
      return typeof value === 'number' ? (
        <NumberRow
          parameter={parameter}
          value={value}
          onChange={onChange}
          onRest={onRest}
          {...whose}
          {...(note !== undefined && { note })}
        />
      ) : null
    case 'choice':
      return <ChoiceRow parameter={parameter} value={value} onChange={set} {...whose} />
    case 'switch':
      return <Switch on={value === true} label={parameter.label} onChange={set} />
    case 'list':
      return null
  }
})
