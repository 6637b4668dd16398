import { plain } from '../../core'
import { useBench, useListen } from '../bench-context'
import { Slider } from '../fields/slider'
import { monitorParameter } from '../listening/parameters'
import { PlayButton } from '../listening/play-button'
import styles from './trial.module.css'

/** Play, stop and volume: the same for every choice of a round. */
export function RoundSound() {
  const { listening } = useBench()
  const monitorDb = useListen((state) => state.monitorDb)
  const looping = useListen((state) => state.loop !== null)
  return (
    <div className={styles.sound}>
      <PlayButton />
      <span className={styles.note}>Space{looping ? ', repeats the loop' : ''}</span>
      <div className={styles.volume}>
        <span className={styles.note}>monitor {plain(monitorDb, 0)} dB</span>
        <Slider
          parameter={monitorParameter}
          value={monitorDb}
          label="Monitor volume"
          onChange={(value) => listening.setMonitorDb(value)}
          onRest={() => undefined}
        />
      </div>
    </div>
  )
}
