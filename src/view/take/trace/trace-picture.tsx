import { type CSSProperties, useLayoutEffect, useRef } from 'react'
import type { EvidenceState } from '../../../session/evidence-store'
import { useApp } from '../../context/app-context'
import type { TimeView } from '../time/time-view'
import { TraceCanvas } from './trace-canvas'
import { columnsOf, fillColumns, pixelsOf, traceRangeDb } from './trace-geometry'
import styles from './trace-picture.module.css'

interface TracePictureProps {
  readonly stageId: string
  /** Whether the stage is on and heard. */
  readonly works: boolean
  readonly view: TimeView
  /** CSS pixels. */
  readonly width: number
  readonly height: number
  /** One sentence on what the picture shows. */
  readonly sentence: string
  readonly style: CSSProperties
  /** Told how far down the picture reaches, dB, when that changes. */
  onRange(rangeDb: number): void
}

/**
 * The trace of a stage, hanging down from 0 dB. While a control moves only the columns of what has come are worked
 * out and drawn anew, without rendering anything.
 */
export function TracePicture(props: TracePictureProps) {
  const { stageId, works, view, width, height, sentence, style, onRange } = props
  const { evidence } = useApp()
  const picture = useRef<HTMLCanvasElement>(null)
  useLayoutEffect(() => {
    const canvas = picture.current
    const context = canvas?.getContext('2d', { willReadFrequently: true })
    if (!canvas || !context) return
    canvas.width = Math.max(1, Math.round(width * devicePixelRatio))
    canvas.height = Math.max(1, Math.round(height * devicePixelRatio))
    const drawing = new TraceCanvas(canvas, context)
    let layout = drawing.layout(0)
    const columns = new Float32Array(Math.ceil(layout.widthPx / layout.columnPx))

    const draw = (state: EvidenceState, before: EvidenceState | null) => {
      const { live, trace, maxDb } = shownOf(state, stageId)
      const last = before && shownOf(before, stageId)
      if (last && live === last.live && trace === last.trace) return
      if (!works || !trace) return drawing.drawNoTrace(!works)
      const isNext = live && trace === last?.trace
      const hops = isNext ? live.changed : { from: 0, to: trace.gainDb.length }
      const news = columnsOf(hops, trace.hopFrames, view, columns.length)
      fillColumns(columns, trace, view, news)
      // Deeper than the figures say while a control moves: they follow later.
      const seenMaxDb = columns.reduce((most, gainDb) => Math.max(most, -gainDb), 0)
      const rangeDb = traceRangeDb(Math.max(maxDb, seenMaxDb))
      const isSameRange = rangeDb === layout.rangeDb
      if (!isSameRange) {
        layout = drawing.layout(rangeDb)
        onRange(rangeDb)
      }
      const pixels = isNext && isSameRange ? pixelsOf(news, layout) : { from: 0, to: layout.widthPx }
      drawing.drawTrace(columns, layout, pixels)
    }
    draw(evidence.getState(), null)
    return evidence.subscribe(draw)
  }, [evidence, stageId, works, view, width, height, onRange])
  return (
    <canvas
      ref={picture}
      className={styles.trace}
      role="img"
      aria-label={sentence}
      style={{ ...style, width, height }}
    />
  )
}

/** What the picture of a stage is drawn from: the live trace while there is one. */
function shownOf({ liveTraces, evidence }: EvidenceState, stageId: string) {
  const live = liveTraces.get(stageId)
  const found = evidence?.stages.get(stageId)
  return { live, trace: live?.trace ?? found?.trace ?? null, maxDb: found?.reduction?.maxDb ?? 0 }
}
