import { plain } from '../../core'
import { useBench, useListen } from '../bench-context'
import { Slider } from '../fields/slider'
import styles from './monitor.module.css'
import { OutputLevels } from './output-levels'
import { monitorParameter } from './parameters'

/** How loud it is here. The delivered file knows nothing of it. */
export function Monitor() {
  const { listening } = useBench()
  const monitorDb = useListen((state) => state.monitorDb)
  return (
    <div className={styles.monitor}>
      <div className={styles.monitorWords}>
        <span>
          monitor {plain(monitorDb, 0)} dB
          <span className={styles.guarded} title="No peak leaves here above −1 dBFS">
            , guarded
          </span>
        </span>
        <OutputLevels />
      </div>
      <Slider
        parameter={monitorParameter}
        value={monitorDb}
        label="Monitor volume"
        onChange={(value) => listening.setMonitorDb(value)}
        onRest={() => undefined}
      />
    </div>
  )
}
