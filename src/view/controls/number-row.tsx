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
  onChange(value: number): void
  onRest(): void
}

/** Label, slider and number field of one setting, in three columns of the grid around it. */
export function NumberRow({ parameter, value, owner, onChange, onRest }: NumberRowProps) {
  const label = owner ? `${owner}, ${parameter.label}` : parameter.label
  const helpId = useId()
  const control = { parameter, value, describedBy: helpId, onChange, onRest }
  return (
    <div className={styles.number}>
      <span className={styles.label} aria-hidden="true">
        {parameter.label}
      </span>
      <span id={helpId} hidden>
        {parameter.help}
      </span>
      <Slider {...control} label={label} />
      <NumberField {...control} label={`${label}, typed`} />
    </div>
  )
}
