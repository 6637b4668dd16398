import { useRef } from 'react'
import { backingLevelParameter, backingOffsetParameter } from '../../session/listening/parameters'
import { useApp, useListen, useTake } from '../context/app-context'
import { NumberRow } from '../controls/number-row'
import styles from './backing-settings.module.css'

/** Level and offset of the backing, folded away until asked for. */
export function BackingSettings() {
  const { listening, takes } = useApp()
  const details = useRef<HTMLDetailsElement>(null)
  const name = useTake(({ backing }) => backing?.name ?? '')
  const levelDb = useListen((state) => state.backingLevelDb)
  const offsetMs = useListen((state) => state.backingOffsetMs)
  const rest = () => undefined
  const fold = () => {
    if (details.current) details.current.open = false
  }
  return (
    <details
      ref={details}
      className={styles.settings}
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || !details.current?.open) return
        event.stopPropagation()
        fold()
        details.current.querySelector('summary')?.focus()
      }}
      onBlur={(event) => {
        if (event.relatedTarget && !event.currentTarget.contains(event.relatedTarget)) fold()
      }}
    >
      <summary>
        backing:
        <br />
        level, offset
      </summary>
      <div className={styles.settingsSheet}>
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
        <button type="button" onClick={() => takes.removeBacking()}>
          Remove backing
        </button>
      </div>
    </details>
  )
}
