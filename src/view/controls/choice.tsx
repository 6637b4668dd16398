import { useId } from 'react'
import styles from './choice.module.css'
import { Unseen } from './unseen'

interface ChoiceProps<Value extends string> {
  /** What is chosen. */
  readonly legend: string
  /** Shows the legend in front of the options. */
  readonly showsLegend?: boolean
  /** Null: none of them. */
  readonly value: Value | null
  readonly options: readonly {
    readonly value: Value
    readonly label: string
    /** What the label means, where it is short. */
    readonly title?: string | undefined
    readonly disabled?: boolean
  }[]
  readonly className?: string | undefined
  /** The key that goes to the next of them. */
  readonly keyHint?: string
  onChange(value: Value): void
}

/** One of a few, all of them in sight: native radio buttons, drawn as segments of one frame. */
export function Choice<Value extends string>({
  legend,
  showsLegend = false,
  value,
  options,
  className = styles.choice,
  keyHint,
  onChange,
}: ChoiceProps<Value>) {
  const name = useId()
  return (
    <fieldset className={className} title={keyHint && `${legend}: key ${keyHint}`}>
      {showsLegend ? <legend>{legend}</legend> : <Unseen as="legend">{legend}</Unseen>}
      {options.map((option) => (
        <label key={option.value} data-value={option.value} title={option.title}>
          <input
            type="radio"
            name={name}
            checked={option.value === value}
            disabled={option.disabled}
            onChange={() => onChange(option.value)}
          />
          <span data-label={option.label}>{option.label}</span>
        </label>
      ))}
    </fieldset>
  )
}
