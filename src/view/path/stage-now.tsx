import { useEffect, useRef, useState } from 'react'
import { plain } from '../../core'
import type { ListenState } from '../../state/listen-store'
import { useBench } from '../bench-context'
import styles from './stage-now.module.css'

/** The line is full at this much, dB. */
const MOST_DB = 24
/** The figure changes calmly enough to be read, ms. */
const EVERY_MS = 250

interface StageNowProps {
  /** Position of the stage in the chain, from 0. */
  readonly index: number
  /** Its number and kind. */
  readonly name: string
}

/** What a stage holds back now, while it plays: a line of ink that moves at once, and a figure that moves calmly. */
export function StageNow({ index, name }: StageNowProps) {
  const { listen } = useBench()
  const line = useRef<HTMLSpanElement>(null)
  const [heldDb, setHeldDb] = useState<number | null>(null)
  useEffect(() => {
    let most: number | null = null
    const stop = listen.subscribe((state) => {
      const now = heldNow(state, index)
      if (now !== null) most = Math.max(most ?? 0, now)
      if (line.current)
        line.current.style.transform = `scaleX(${Math.min(1, (now ?? 0) / MOST_DB).toFixed(3)})`
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
        <span className={styles.held} ref={line} />
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
