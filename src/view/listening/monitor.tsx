import { useId } from 'react'
import { plain } from '../../core'
import { useBench, useListen } from '../bench-context'
import styles from './listening.module.css'
import { OutputPeak } from './output-peak'

const LOWEST_DB = -60
const HIGHEST_DB = 0

/** How loud it is here. The delivered file knows nothing of it. */
export function Monitor() {
  const { listening } = useBench()
  const monitorDb = useListen((state) => state.monitorDb)
  const id = useId()
  const text = `${plain(monitorDb, 0)} dB`
  return (
    <div className={styles.monitor}>
      <div className={styles.monitorWords}>
        <label htmlFor={id}>monitor {text}, guarded at −1 dBFS</label>
        <OutputPeak />
      </div>
      <input
        id={id}
        type="range"
        min={LOWEST_DB}
        max={HIGHEST_DB}
        step={1}
        value={monitorDb}
        aria-valuetext={`${plain(monitorDb, 0)} decibels`}
        onChange={(event) => listening.setMonitorDb(event.target.valueAsNumber)}
      />
    </div>
  )
}
