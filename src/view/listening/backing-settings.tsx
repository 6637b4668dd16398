import { useBench, useListen, useTake } from '../bench-context'
import { NumberRow } from '../fields/number-row'
import styles from './backing-settings.module.css'
import { backingLevelParameter, backingOffsetParameter } from './parameters'

/** Level and place of the backing, behind one word, so that they are there but not in the way. */
export function BackingSettings() {
  const { listening, takes } = useBench()
  const name = useTake(({ backing }) => backing?.name ?? '')
  const levelDb = useListen((state) => state.backingLevelDb)
  const offsetMs = useListen((state) => state.backingOffsetMs)
  const rest = () => undefined
  return (
    <details className={styles.settings}>
      <summary>level, shift</summary>
      <div className={styles.settingsSheet}>
        <p className={styles.wide}>{name}</p>
        <NumberRow
          parameter={backingLevelParameter}
          value={levelDb}
          owner="Backing"
          onChange={(backingLevelDb) => listening.setBacking({ backingLevelDb })}
          onRest={rest}
        />
        <NumberRow
          parameter={backingOffsetParameter}
          value={offsetMs}
          owner="Backing"
          onChange={(backingOffsetMs) => listening.setBacking({ backingOffsetMs })}
          onRest={rest}
        />
        <button type="button" onClick={() => takes.removeBacking()}>
          take the backing off
        </button>
      </div>
    </details>
  )
}
