import { useEffect, useState } from 'react'
import type { ListenState } from '../../session/listening/listen-store'
import { useApp } from './app-context'

/** As long as a glance, so that short reductions are seen: the maximum within it is shown, ms. */
const WINDOW_MS = 100

/**
 * Maximum gain reduction of a stage within the last tenth of a second, dB, 0 or more, as often as the audio thread
 * reports; null where it reports none.
 * @param index position of the stage in the chain, from 0
 */
export function useGainReduction(index: number): number | null {
  const { listen } = useApp()
  const [reductionDb, setReductionDb] = useState<number | null>(null)
  useEffect(() => {
    let late: { readonly at: number; readonly db: number }[] = []
    return listen.subscribe((state, before) => {
      if (state.stageGainsDb === before.stageGainsDb && state.playing === before.playing) return
      const db = reductionIn(state, index)
      if (db === null) {
        late = []
        setReductionDb(null)
        return
      }
      const at = performance.now()
      late = [...late.filter((told) => at - told.at < WINDOW_MS), { at, db }]
      setReductionDb(Math.max(...late.map((told) => told.db)))
    })
  }, [listen, index])
  return reductionDb
}

function reductionIn({ playing, scope, stageGainsDb }: ListenState, index: number): number | null {
  // The stages that are heard are not those of the current chain.
  if (scope.kind === 'snapshots' && scope.b) return null
  const gainDb = stageGainsDb[index]
  return playing && gainDb !== undefined ? Math.max(0, -gainDb) : null
}
