import { useId } from 'react'
import styles from './keyed-choice.module.css'

interface KeyedOption<Value extends string> {
  readonly value: Value
  readonly label: string
  /** The key that chooses it, as it is printed and as the browser calls it. */
  readonly key: string
  readonly keyName: string
}

interface KeyedChoiceProps<Value extends string> {
  readonly legend: string
  /** Null while none is chosen. */
  readonly value: Value | null
  readonly options: readonly KeyedOption<Value>[]
  /** Identifier of the words that say why none can be chosen now. */
  readonly refusedBy?: string | undefined
  onChange(value: Value): void
}

/** One of a few, side by side, each with its key: native radio buttons. */
export function KeyedChoice<Value extends string>({
  legend,
  value,
  options,
  refusedBy,
  onChange,
}: KeyedChoiceProps<Value>) {
  const name = useId()
  return (
    <fieldset className={styles.choice} disabled={refusedBy !== undefined} aria-describedby={refusedBy}>
      <legend>{legend}</legend>
      {options.map((option) => (
        <label key={option.value} data-name={option.label}>
          <input
            type="radio"
            name={name}
            checked={option.value === value}
            aria-keyshortcuts={option.keyName}
            onChange={() => onChange(option.value)}
          />
          <span>{option.label}</span>
          <span className={styles.key} aria-hidden="true">
            {option.key}
          </span>
        </label>
      ))}
    </fieldset>
  )
}
