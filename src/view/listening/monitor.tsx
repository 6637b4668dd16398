import { plain } from '../../core'
import { useListen } from '../context/app-context'
import { MonitorSlider } from '../playback/monitor-slider'
import styles from './monitor.module.css'
import { OutputLevels } from './output-levels'

/** The monitor volume and the levels at the output. They do not affect the delivered file. */
export function Monitor() {
  const monitorDb = useListen((state) => state.monitorDb)
  return (
    <div className={styles.monitor}>
      <div className={styles.monitorWords}>
        <span>
          monitor {plain(monitorDb, 0)} dB
          <span title="Peaks limited to −1 dBFS">, limited</span>
        </span>
        <OutputLevels />
      </div>
      <MonitorSlider />
    </div>
  )
}
