import { useId } from 'react'
import type { NumberParameter } from '../../core'
import styles from './controls.module.css'
import { NumberField } from './number-field'
import { Slider } from './slider'

interface NumberRowProps {
  readonly parameter: NumberParameter
  readonly value: number
  /** What the setting belongs to, spoken before its label: "Band a". */
  readonly owner?: string
  /** What else is to be seen of it right now, in a word. */
  readonly note?: string
  onChange(value: number): void
  onRest(): void
}

/**
 * Label, slider and number field of one setting, in three columns of the grid around it; where that says so, the label
 * and the field above the slider.
 */
export function NumberRow({ parameter, value, owner, note, onChange, onRest }: NumberRowProps) {
  const label = owner ? `${owner}, ${parameter.label}` : parameter.label
  const helpId = useId()
  const control = { parameter, value, describedBy: helpId, onChange, onRest }
  return (
    <div className={styles.number} title={parameter.help}>
      <span className={styles.name} aria-hidden="true">
        {parameter.label}
        {note && <span className={styles.note}>{note}</span>}
      </span>
      <span id={helpId} hidden>
        {parameter.help}
      </span>
      <Slider {...control} label={label} />
      <NumberField {...control} label={`${label}, typed`} />
    </div>
  )
}
