import { useId } from 'react'
import type { ChoiceParameter } from '../../core'
import unseen from '../unseen.module.css'
import { ChoiceField } from './choice-field'
import styles from './rows.module.css'

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
      <label className={styles.label} htmlFor={id}>
        {owner && <span className={unseen.unseen}>{owner}, </span>}
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
