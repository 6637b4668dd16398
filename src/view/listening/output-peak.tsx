import { useEffect, useState } from 'react'
import { useStore } from 'zustand'
import { plain } from '../../core'
import { useBench } from '../bench-context'
import styles from './listening.module.css'

/** Calm enough to read, ms. */
const EVERY_MS = 250
/** What counts as silence, dBFS. */
const SILENCE_DBFS = -90

/** The highest peak that went to the output in the last quarter of a second. */
export function OutputPeak() {
  const { listen, trial } = useBench()
  const isHidden = useStore(trial, ({ running }) => running !== null)
  const [peakDb, setPeakDb] = useState(Number.NEGATIVE_INFINITY)
  useEffect(() => {
    let highest = Number.NEGATIVE_INFINITY
    const stop = listen.subscribe(({ playing, outputPeakDb }) => {
      if (playing) highest = Math.max(highest, outputPeakDb)
    })
    const timer = setInterval(() => {
      setPeakDb(Math.round(highest))
      highest = Number.NEGATIVE_INFINITY
    }, EVERY_MS)
    return () => {
      stop()
      clearInterval(timer)
    }
  }, [listen])
  if (isHidden) return <span className={styles.peak}>peak not shown</span>
  return (
    <span className={styles.peak}>{peakDb > SILENCE_DBFS ? `peak ${plain(peakDb, 0)} dBFS` : 'silent'}</span>
  )
}
