import type { Parameter } from '../../core'
import { ChoiceRow } from '../fields/choice-row'
import { NumberRow } from '../fields/number-row'
import { Switch } from '../fields/switch'
import styles from './setting-row.module.css'

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

/** Label and control of one setting. */
export function SettingRow({ parameter, value, owner, onChange, onRest, onHelp }: SettingRowProps) {
  const tell = () => onHelp(parameter.help)
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: only listens to what the controls inside are doing
    <div className={styles.row} onFocus={tell} onPointerEnter={tell}>
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
    </div>
  )
}
