import { plain } from '../../core'
import { useListen } from '../context/app-context'
import { MonitorSlider } from '../playback/monitor-slider'
import styles from './monitor.module.css'
import { OutputLevels } from './output-levels'

/** How loud it is here. The delivered file knows nothing of it. */
export function Monitor() {
  const monitorDb = useListen((state) => state.monitorDb)
  return (
    <div className={styles.monitor}>
      <div className={styles.monitorWords}>
        <span>
          monitor {plain(monitorDb, 0)} dB
          <span title="No peak leaves here above −1 dBFS">, guarded</span>
        </span>
        <OutputLevels />
      </div>
      <MonitorSlider />
    </div>
  )
}
