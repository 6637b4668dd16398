import { Switch } from '../controls/switch'
import styles from './difference-switch.module.css'

interface DifferenceSwitchProps {
  readonly on: boolean
  onChange(on: boolean): void
}

/** Shows the spectrum of one side less that of the other instead of both. */
export function DifferenceSwitch({ on, onChange }: DifferenceSwitchProps) {
  return (
    <span className={styles.difference} title="Show processed minus bypassed spectrum">
      <span aria-hidden="true">difference</span>
      <Switch on={on} label="Spectrum difference" onChange={onChange} />
    </span>
  )
}
