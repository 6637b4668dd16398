import { printedKey } from '../actions/key-table'
import { useApp, useListen } from '../context/app-context'
import { Switch } from '../controls/switch'
import styles from './listening.module.css'

/** Plays the difference of both sides instead of either. */
export function DifferenceSwitch() {
  const { listening } = useApp()
  const difference = useListen(({ heard }) => heard === 'difference')
  return (
    <span
      className={styles.difference}
      title={`Plays processed minus bypassed instead of a side, 6 dB lower: key ${printedKey('difference')}. ${printedKey('side')} goes back to a side.`}
    >
      <Switch on={difference} label="difference only" onChange={(on) => listening.setDifference(on)} />
      <span aria-hidden="true">difference only</span>
    </span>
  )
}
