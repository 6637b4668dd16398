import { useCallback, useState } from 'react'
import { plain } from '../../../core'
import type { ListenState } from '../../../session/listening/listen-store'
import { largestReductionDb } from './meter-geometry'
import { useCalmReading } from './use-calm-reading'

/** The largest gain reduction of any stage in the last quarter of a second. */
export function ReductionLevel() {
  const [reductionDb, setReductionDb] = useState(0)
  const begin = useCallback(() => {
    let largest = 0
    return {
      collect({ playing, stageGainsDb }: ListenState, before: ListenState) {
        if (playing && stageGainsDb !== before.stageGainsDb)
          largest = Math.max(largest, largestReductionDb(stageGainsDb))
      },
      tell() {
        setReductionDb(largest)
        largest = 0
      },
    }
  }, [])
  useCalmReading(begin)
  return (
    <span title="Largest gain reduction of any stage">
      reduction {plain(reductionDb, reductionDb > 0 ? 1 : 0)} dB
    </span>
  )
}
