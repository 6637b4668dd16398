import { backingLevelParameter, backingOffsetParameter } from '../../session/listening/parameters'
import { useApp, useListen, useTake } from '../context/app-context'
import { NumberRow } from '../controls/number-row'
import styles from './backing-settings.module.css'

/** Level and offset of the backing. */
export function BackingSettings() {
  const { listening, takes } = useApp()
  const name = useTake(({ backing }) => backing?.name ?? '')
  const levelDb = useListen((state) => state.backingLevelDb)
  const offsetMs = useListen((state) => state.backingOffsetMs)
  const rest = () => undefined
  return (
    <div className={styles.settings}>
      <p className={styles.wide}>
        Backing: <bdi>{name}</bdi>
      </p>
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
      <button type="button" className={styles.wide} onClick={() => takes.removeBacking()}>
        Remove backing
      </button>
    </div>
  )
}
