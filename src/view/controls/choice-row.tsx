import { useId } from 'react'
import type { ChoiceParameter } from '../../core'
import { ChoiceField } from './choice-field'
import styles from './controls.module.css'
import { Unseen } from './unseen'

interface ChoiceRowProps {
  readonly parameter: ChoiceParameter
  readonly value: unknown
  readonly owner?: string
  onChange(value: string | number): void
}

/** Label and choice of one setting. */
export function ChoiceRow({ parameter, value, owner, onChange }: ChoiceRowProps) {
  const id = useId()
  return (
    <>
      <label className={styles.label} htmlFor={id} title={parameter.help}>
        {owner && <Unseen>{owner}, </Unseen>}
        {parameter.label}
      </label>
      <span className={styles.wide}>
        <span id={`${id}-help`} hidden>
          {parameter.help}
        </span>
        <ChoiceField
          id={id}
          describedBy={`${id}-help`}
          parameter={parameter}
          value={value}
          onChange={onChange}
        />
      </span>
    </>
  )
}
