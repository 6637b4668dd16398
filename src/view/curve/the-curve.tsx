import { type ComponentType, useCallback, useState } from 'react'
import { bandsOf } from '../../core'
import { sideWords } from '../../session/comparison/side-words'
import { type LazyPart, lazyPart } from '../../session/lazy-part'
import { useChain, useListen, useTake } from '../context/app-context'
import { useTextScale } from '../hooks/use-text-scale'
import { useWidth } from '../hooks/use-width'
import { FailedPart } from '../lazy/failed-part'
import { LazyView } from '../lazy/lazy-view'
import { SideLegend } from '../plot/side-legend'
import type { CurvePlotProps } from './curve-plot'
import { fittingRangeDb } from './fitting-range'
import styles from './the-curve.module.css'

const HEIGHT = 236
const FIRST_WIDTH = 640

/** What draws the curve: it comes with the first take, so that the page starts sooner. */
export const curvePlot: LazyPart<ComponentType<CurvePlotProps>> = lazyPart(
  'The curve',
  async () => (await import('./curve-plot')).CurvePlot,
)

/** The magnitude response of everything linear in the chain, over the spectrum of the take. */
export function TheCurve() {
  const chain = useChain((state) => state.chain)
  const scope = useListen((state) => state.scope)
  const sides = sideWords(scope)
  const [holder, width] = useWidth(FIRST_WIDTH)
  const textScale = useTextScale()
  // The scale is fixed during a drag: it must not slip away from under the hand.
  const [draggedRangeDb, setDraggedRange] = useState<number | null>(null)
  const rangeDb = draggedRangeDb ?? fittingRangeDb(chain)
  const height = Math.round(HEIGHT * Math.sqrt(textScale))
  const onDrag = useCallback((dragged: boolean) => setDraggedRange(dragged ? rangeDb : null), [rangeDb])
  const hasBands = chain.stages.some((stage) => (bandsOf(stage)?.length ?? 0) > 0)
  const isDrawn = useFirstTakeSettled()
  return (
    <section className={styles.curve} aria-labelledby="the-curve">
      <div className={styles.head}>
        <h2 id="the-curve">Response</h2>
        <p className={styles.note}>
          ±{rangeDb} dB; {scope.kind === 'snapshots' && 'current response; '}spectrum{' '}
          <SideLegend sides={sides} />
        </p>
      </div>
      <div className={styles.holder} ref={holder} style={{ minHeight: height }}>
        {isDrawn && (
          <LazyView
            part={curvePlot}
            props={{ chain, width, height, rangeDb, textScale, onDrag }}
            failed={FailedPart}
          />
        )}
      </div>
      {hasBands && (
        <p className={styles.note}>
          Drag a band<span className={styles.keyHint}>, or with Shift its Q; arrow keys move the band</span>.
        </p>
      )}
    </section>
  )
}

/** Whether the first take has come, or none is coming any more; true from then on. */
function useFirstTakeSettled(): boolean {
  const settles = useTake(({ take, loading }) => take !== null || loading === null)
  const [settled, setSettled] = useState(settles)
  if (settles && !settled) setSettled(true)
  return settled
}
