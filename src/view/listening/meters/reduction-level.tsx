import { useEffect, useState } from 'react'
import { plain } from '../../../core'
import { useApp } from '../../context/app-context'
import { largestReductionDb } from './meter-geometry'

/** Calm enough to read, ms. */
const EVERY_MS = 250

/** The largest gain reduction of any stage in the last quarter of a second. */
export function ReductionLevel() {
  const { listen } = useApp()
  const [reductionDb, setReductionDb] = useState(0)
  useEffect(() => {
    let largest = 0
    const stop = listen.subscribe(({ playing, stageGainsDb }, before) => {
      if (playing && stageGainsDb !== before.stageGainsDb)
        largest = Math.max(largest, largestReductionDb(stageGainsDb))
    })
    const timer = setInterval(() => {
      setReductionDb(largest)
      largest = 0
    }, EVERY_MS)
    return () => {
      stop()
      clearInterval(timer)
    }
  }, [listen])
  return (
    <span title="Largest gain reduction of any stage">
      reduction {plain(reductionDb, reductionDb > 0 ? 1 : 0)} dB
    </span>
  )
}
