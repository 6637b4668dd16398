import { useCallback, useMemo, useState } from 'react'
import { magnitudeDb, sweptChain } from '../../core'
import { sideWords } from '../../session/comparison/side-words'
import { useChain, useListen, useTake } from '../context/app-context'
import { useTextScale } from '../hooks/use-text-scale'
import { useWidth } from '../hooks/use-width'
import { SideLegend } from '../plot/side-legend'
import { Axes } from './axes'
import { BandCurves } from './band-curves'
import { BandHandle } from './band-handle'
import { curveSentence } from './curve-sentence'
import { handlesOf } from './handles'
import { fittingRangeDb, plotOf } from './plot'
import { responsePath } from './response-path'
import { Spectra } from './spectra'
import styles from './the-curve.module.css'

const HEIGHT = 236
const FIRST_WIDTH = 640

/** Before there is a take, responses are those at the commonest rate, Hz. */
const USUAL_RATE = 48_000

/** The magnitude response of everything linear in the chain, over the spectrum of the take. */
export function TheCurve() {
  const settled = useChain((state) => state.chain)
  const sweep = useListen((state) => state.sweep)
  // What is heard: while a band is swept, it is a narrow boost.
  const chain = useMemo(() => (sweep ? sweptChain(settled, sweep) : settled), [settled, sweep])
  const scope = useListen((state) => state.scope)
  const sides = sideWords(scope)
  const sampleRate = useTake((state) => state.take?.sound.sampleRate ?? USUAL_RATE)
  const [holder, width] = useWidth(FIRST_WIDTH)
  const textScale = useTextScale()
  // The scale is fixed during a drag: it must not slip away from under the hand.
  const [draggedRangeDb, setDraggedRange] = useState<number | null>(null)
  const rangeDb = draggedRangeDb ?? fittingRangeDb(settled)
  const height = Math.round(HEIGHT * Math.sqrt(textScale))
  const plot = useMemo(
    () => plotOf(width, height, rangeDb, sampleRate, textScale),
    [width, height, rangeDb, sampleRate, textScale],
  )
  const magnitudes = useMemo(
    () => magnitudeDb(chain, plot.frequenciesHz, sampleRate),
    [chain, plot, sampleRate],
  )
  const onDrag = useCallback((dragged: boolean) => setDraggedRange(dragged ? rangeDb : null), [rangeDb])
  const handles = handlesOf(chain, plot, sampleRate)
  return (
    <section className={styles.curve} aria-labelledby="the-curve">
      <div className={styles.head}>
        <h2 id="the-curve">The curve</h2>
        <p className={styles.note}>
          ±{rangeDb} dB; {scope.kind === 'snapshots' && 'current response; '}spectrum{' '}
          <SideLegend sides={sides} />
        </p>
      </div>
      <div className={styles.holder} ref={holder}>
        <svg
          className={styles.plot}
          width={width}
          height={height}
          role="img"
          aria-label={curveSentence(plot.frequenciesHz, magnitudes)}
        >
          <clipPath id="curve-clip">
            <rect
              x={plot.x.range()[0]}
              y={plot.y.range()[1]}
              width={Math.max(0, (plot.x.range()[1] ?? 0) - (plot.x.range()[0] ?? 0))}
              height={(plot.y.range()[0] ?? 0) - (plot.y.range()[1] ?? 0)}
            />
          </clipPath>
          <Axes plot={plot} />
          <Spectra plot={plot} clipPath="url(#curve-clip)" />
          <g clipPath="url(#curve-clip)">
            <BandCurves chain={chain} plot={plot} sampleRate={sampleRate} />
            <path className={styles.combined} d={responsePath(plot, magnitudes)} />
          </g>
        </svg>
        {handles.map((handle) => (
          <BandHandle
            key={`${handle.stageId} ${handle.bandIndex}`}
            handle={handle}
            plot={plot}
            onDrag={onDrag}
          />
        ))}
      </div>
      {handles.length > 0 && (
        <p className={styles.note}>
          Drag a band<span className={styles.keyHint}>, or with Shift its Q; arrow keys move the band</span>.
        </p>
      )}
    </section>
  )
}
