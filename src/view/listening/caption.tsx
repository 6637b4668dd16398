import { printedKey } from '../actions/key-table'
import styles from './caption.module.css'
import { ComparedWords } from './compared-words'
import { LevelTicks } from './level-ticks'
import { MatchedSwitch } from './matched-switch'

/** Under which key the sides are switched, what they compare, and how they are matched. */
export function Caption() {
  return (
    <div className={styles.caption}>
      <p className={styles.compared}>
        <span className={styles.key}>
          <kbd>{printedKey('side')}</kbd> switches{' '}
        </span>
        <ComparedWords />
      </p>
      <MatchedSwitch />
      <div className={styles.ticks}>
        <LevelTicks />
      </div>
    </div>
  )
}
