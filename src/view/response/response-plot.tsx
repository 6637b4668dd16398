import { type PointerEvent, useCallback, useMemo, useState } from 'react'
import { magnitudeDb, sweptChain } from '../../core'
import { useChain, useListen, useTake } from '../context/app-context'
import { useMeasuredRange } from '../context/use-loop-evidence'
import { useSize } from '../hooks/use-size'
import { useTextScale } from '../hooks/use-text-scale'
import { Axes } from './axes'
import { BandCurves } from './band-curves'
import { BandHandles } from './band-handles'
import { BandStems } from './band-stems'
import { DifferenceSpectrum } from './difference-spectrum'
import { DifferenceSwitch } from './difference-switch'
import { fittingRangeDb } from './fitting-range'
import { handlesOf } from './handles'
import { withNamePlaces } from './name-places'
import { plotOf } from './plot'
import { createPointedStore, type PointedStore } from './pointed-store'
import { PointerLine } from './pointer-line'
import { Readout } from './readout'
import { responsePath } from './response-path'
import styles from './response-plot.module.css'
import { responseSentence } from './response-sentence'
import { Spectra } from './spectra'

/** Before there is a take, responses are those at the commonest rate, Hz. */
const USUAL_RATE = 48_000
/** Until it is laid out. */
const FIRST_SIZE = { width: 640, height: 240 }

/** The response with its axes, the spectra behind it and a handle for each band, and what it reads at the pointer. */
export function ResponsePlot() {
  const settled = useChain((state) => state.chain)
  const sweep = useListen((state) => state.sweep)
  // What is heard: while a band is swept, it is a narrow boost.
  const chain = useMemo(() => (sweep ? sweptChain(settled, sweep) : settled), [settled, sweep])
  const sampleRate = useTake((state) => state.take?.sound.sampleRate ?? USUAL_RATE)
  const [holder, { width, height }] = useSize(FIRST_SIZE)
  const textScale = useTextScale()
  const [isDifference, setDifference] = useState(false)
  // The scale is fixed during a drag: it must not slip away from under the hand.
  const [draggedRangeDb, setDraggedRange] = useState<number | null>(null)
  const rangeDb = draggedRangeDb ?? fittingRangeDb(settled)
  const onDrag = useCallback((dragged: boolean) => setDraggedRange(dragged ? rangeDb : null), [rangeDb])
  const plot = useMemo(
    () => plotOf(width, height, rangeDb, sampleRate, textScale),
    [width, height, rangeDb, sampleRate, textScale],
  )
  const magnitudes = useMemo(
    () => magnitudeDb(chain, plot.frequenciesHz, sampleRate),
    [chain, plot, sampleRate],
  )
  const handles = withNamePlaces(handlesOf(chain, plot, sampleRate), plot, magnitudes)
  const [pointed] = useState(createPointedStore)
  const measured = useMeasuredRange()
  const [left = 0, right = 0] = plot.x.range()
  const [bottom = 0, top = 0] = plot.y.range()
  return (
    <>
      <div className={styles.head}>
        <Readout pointed={pointed} chain={chain} sampleRate={sampleRate} isDifference={isDifference} />
        <DifferenceSwitch on={isDifference} onChange={setDifference} />
      </div>
      <div className={styles.holder} ref={holder} {...pointing(pointed, plot.x)}>
        <svg
          className={styles.plot}
          width={width}
          height={height}
          role="img"
          aria-label={`${responseSentence(plot.frequenciesHz, magnitudes)} Behind it ${
            isDifference ? 'what the spectrum gains' : 'the average spectrum of both sides'
          }, ${measured}.`}
        >
          <clipPath id="response-clip">
            <rect x={left} y={top} width={Math.max(0, right - left)} height={Math.max(0, bottom - top)} />
          </clipPath>
          <Axes plot={plot} />
          {isDifference ? (
            <DifferenceSpectrum plot={plot} clipPath={CLIP} />
          ) : (
            <Spectra plot={plot} clipPath={CLIP} />
          )}
          <PointerLine pointed={pointed} plot={plot} />
          <BandStems handles={handles} pointed={pointed} />
          <g clipPath={CLIP}>
            <BandCurves chain={chain} plot={plot} sampleRate={sampleRate} />
            <path className={styles.combined} d={responsePath(plot, magnitudes)} />
          </g>
        </svg>
        <BandHandles handles={handles} plot={plot} pointed={pointed} onDrag={onDrag} />
      </div>
    </>
  )
}

const CLIP = 'url(#response-clip)'

/** Follows the pointer over the plot; a finger only while it is down. */
function pointing(pointed: PointedStore, x: { invert(left: number): number; range(): number[] }) {
  const follow = ({ currentTarget, clientX }: PointerEvent<HTMLElement>) => {
    const at = clientX - currentTarget.getBoundingClientRect().left
    const [left = 0, right = 0] = x.range()
    pointed.setState({ pointerHz: at >= left && at <= right ? x.invert(at) : null })
  }
  return {
    onPointerMove: follow,
    onPointerDown: follow,
    onPointerLeave: () => pointed.setState({ pointerHz: null }),
  }
}
