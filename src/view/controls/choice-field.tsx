import type { ChoiceParameter } from '../../core'
import styles from './choice-field.module.css'

interface ChoiceFieldProps {
  readonly id?: string
  readonly parameter: ChoiceParameter
  readonly value: unknown
  /** Where no visible label points here. */
  readonly label?: string
  readonly describedBy?: string
  onChange(value: string | number): void
}

/** One of a few values, chosen from a native list. */
export function ChoiceField({ id, parameter, value, label, describedBy, onChange }: ChoiceFieldProps) {
  return (
    <select
      id={id}
      className={styles.choice}
      aria-label={label}
      aria-describedby={describedBy}
      value={parameter.options.findIndex((option) => option.value === value)}
      onChange={(event) => {
        const chosen = parameter.options[Number(event.currentTarget.value)]
        if (chosen) onChange(chosen.value)
      }}
    >
      {parameter.options.map((option, index) => (
        <option key={option.value} value={index}>
          {option.label}
        </option>
      ))}
    </select>
  )
}
