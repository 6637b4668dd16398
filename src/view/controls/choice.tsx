import { useId } from 'react'
import styles from './choice.module.css'
import { Unseen } from './unseen'

interface ChoiceProps<Value extends string> {
  /** What is chosen, for screen readers. */
  readonly legend: string
  /** Null: none of them. */
  readonly value: Value | null
  readonly options: readonly { readonly value: Value; readonly label: string; readonly disabled?: boolean }[]
  readonly className?: string | undefined
  /** The key that goes to the next of them. */
  readonly keyHint?: string
  onChange(value: Value): void
}

/** One of a few, all of them in sight: native radio buttons that look like words. */
export function Choice<Value extends string>({
  legend,
  value,
  options,
  className = styles.choice,
  keyHint,
  onChange,
}: ChoiceProps<Value>) {
  const name = useId()
  return (
    <fieldset className={className} title={keyHint && `${legend}: key ${keyHint}`}>
      <Unseen as="legend">{legend}</Unseen>
      {options.map((option) => (
        <label key={option.value} data-value={option.value}>
          <input
            type="radio"
            name={name}
            checked={option.value === value}
            disabled={option.disabled}
            onChange={() => onChange(option.value)}
          />
          <span>{option.label}</span>
        </label>
      ))}
    </fieldset>
  )
}
