import { useEffect, useState } from 'react'
import { plain } from '../../core'
import type { ListenState } from '../../state/listen-store'
import { useBench } from '../bench-context'
import styles from './stage-now.module.css'

/** The line is full at this much, dB. */
const MOST_DB = 24
/** Calm enough to be read, ms. */
const EVERY_MS = 250

interface StageNowProps {
  /** Position of the stage in the chain, from 0. */
  readonly index: number
  /** Its number and kind. */
  readonly name: string
}

/** The most that a stage held back in the last quarter of a second, while it plays: a figure, and a line as long. */
export function StageNow({ index, name }: StageNowProps) {
  const { listen } = useBench()
  const [heldDb, setHeldDb] = useState<number | null>(null)
  useEffect(() => {
    let most: number | null = null
    const stop = listen.subscribe((state) => {
      const now = heldNow(state, index)
      if (now !== null) most = Math.max(most ?? 0, now)
    })
    const timer = setInterval(() => {
      setHeldDb(most === null ? null : Math.round(most * 10) / 10)
      most = null
    }, EVERY_MS)
    return () => {
      stop()
      clearInterval(timer)
    }
  }, [listen, index])
  const words = heldDb === null ? '' : `now ${plain(heldDb, 1)} dB`
  return (
    <span className={styles.now}>
      <meter
        className={styles.spoken}
        min={0}
        max={MOST_DB}
        value={Math.min(MOST_DB, heldDb ?? 0)}
        aria-label={`${name}, gain reduction now`}
        aria-valuetext={heldDb === null ? 'not playing' : `${plain(heldDb, 1)} decibels`}
      />
      <span className={styles.figure} aria-hidden="true">
        {words}
      </span>
      <span className={styles.line}>
        <span
          className={styles.held}
          style={{ transform: `scaleX(${Math.min(1, (heldDb ?? 0) / MOST_DB)})` }}
        />
      </span>
    </span>
  )
}

/** Gain reduction of a stage, dB, 0 or more; null where nothing is told of it. */
function heldNow({ playing, scope, stageGainsDb }: ListenState, index: number): number | null {
  // The stages that are heard are not those on the path.
  if (scope.kind === 'kept' && scope.b) return null
  const gainDb = stageGainsDb[index]
  return playing && gainDb !== undefined ? Math.max(0, -gainDb) : null
}
