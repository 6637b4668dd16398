import { printedKey } from '../actions/key-table'
import { LazyView } from '../lazy/lazy-view'
import { comparedWords, levelTicks, NoPart } from './bar-parts'
import styles from './caption.module.css'
import { MatchedSwitch } from './matched-switch'

const NO_PROPS = {}

/** Under which key the sides are switched, what they compare, and how they are matched. */
export function Caption() {
  return (
    <div className={styles.caption}>
      <p className={styles.compared}>
        <span className={styles.key}>
          <kbd>{printedKey('side')}</kbd> switches{' '}
        </span>
        <LazyView part={comparedWords} props={NO_PROPS} failed={NoPart} />
      </p>
      <MatchedSwitch />
      <div className={styles.ticks}>
        <LazyView part={levelTicks} props={NO_PROPS} failed={NoPart} />
      </div>
    </div>
  )
}
