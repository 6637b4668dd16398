import { useMemo } from 'react'
import { type ChainDoc, magnitudeDb, sweptChain } from '../../core'
import { useListen, useTake } from '../context/app-context'
import { Axes } from './axes'
import { BandCurves } from './band-curves'
import { BandHandle } from './band-handle'
import styles from './curve-plot.module.css'
import { curveSentence } from './curve-sentence'
import { handlesOf } from './handles'
import { plotOf } from './plot'
import { responsePath } from './response-path'
import { Spectra } from './spectra'

/** Before there is a take, responses are those at the commonest rate, Hz. */
const USUAL_RATE = 48_000

/** @see CurvePlot */
export interface CurvePlotProps {
  /** The chain without what is only heard while a band is swept. */
  readonly chain: ChainDoc
  /** CSS pixels. */
  readonly width: number
  readonly height: number
  /** The dB scale goes from minus this to plus this. */
  readonly rangeDb: number
  /** Size of text against the usual. */
  readonly textScale: number
  /** Told when a band begins and ceases to be dragged. */
  onDrag(dragged: boolean): void
}

/** The response with its axes and the spectra behind it, and a handle for each band. */
export function CurvePlot({ chain: settled, width, height, rangeDb, textScale, onDrag }: CurvePlotProps) {
  const sweep = useListen((state) => state.sweep)
  // What is heard: while a band is swept, it is a narrow boost.
  const chain = useMemo(() => (sweep ? sweptChain(settled, sweep) : settled), [settled, sweep])
  const sampleRate = useTake((state) => state.take?.sound.sampleRate ?? USUAL_RATE)
  const plot = useMemo(
    () => plotOf(width, height, rangeDb, sampleRate, textScale),
    [width, height, rangeDb, sampleRate, textScale],
  )
  const magnitudes = useMemo(
    () => magnitudeDb(chain, plot.frequenciesHz, sampleRate),
    [chain, plot, sampleRate],
  )
  return (
    <>
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
      {handlesOf(chain, plot, sampleRate).map((handle) => (
        <BandHandle
          key={`${handle.stageId} ${handle.bandIndex}`}
          handle={handle}
          plot={plot}
          onDrag={onDrag}
        />
      ))}
    </>
  )
}
