import { type ColumnRange, edgePieces, type TraceLayout } from './trace-geometry'

/** What a trace is drawn with, taken from the styles of its canvas. */
export interface TraceInk {
  readonly colour: string
  /** Opacity of what hangs above the line. */
  readonly tint: number
  /** Thickness of the line at 0 dB, and of the line along the trace, device pixels. */
  readonly zeroPx: number
  readonly linePx: number
}

/** Width of a column of the trace, CSS pixels. */
const COLUMN_PX = 2
/** Dashes of the line at 0 dB, and the gaps between them, CSS pixels. */
const DASH_PX = 4

/** Reads `color`, `fill-opacity` and `stroke-width` of a canvas. */
export function traceInk(canvas: HTMLCanvasElement): TraceInk {
  const { color, fillOpacity, strokeWidth } = getComputedStyle(canvas)
  return {
    colour: color,
    tint: Number.parseFloat(fillOpacity),
    zeroPx: Math.max(1, Math.round(devicePixelRatio)),
    linePx: Math.max(1, (Number.parseFloat(strokeWidth) || 1) * devicePixelRatio),
  }
}

/** The layout of a canvas of so many device pixels. */
export function traceLayout(
  { width, height }: HTMLCanvasElement,
  { zeroPx, linePx }: TraceInk,
  rangeDb: number,
): TraceLayout {
  return { widthPx: width, heightPx: height, columnPx: COLUMN_PX * zeroPx, zeroPx, linePx, rangeDb }
}

/** Draws a trace on some pixels, from left to right, over whatever was there. */
export function drawTrace(
  context: CanvasRenderingContext2D,
  ink: TraceInk,
  columns: Float32Array,
  layout: TraceLayout,
  { from, to }: ColumnRange,
): void {
  const pieces = edgePieces(columns, layout, { from, to })
  context.clearRect(from, 0, to - from, layout.heightPx)
  context.fillStyle = ink.colour
  context.globalAlpha = ink.tint
  for (const { x, width, top } of pieces) context.fillRect(x, 0, width, Math.round(top))
  context.globalAlpha = 1
  context.fillRect(from, 0, to - from, ink.zeroPx)
  for (const { x, width, top, bottom } of pieces) context.fillRect(x, top, width, bottom - top)
}

/** Draws a lane without a trace: the line at 0 dB, dashed where the stage does nothing. */
export function drawNoTrace(context: CanvasRenderingContext2D, ink: TraceInk, dashed: boolean): void {
  const { width, height } = context.canvas
  context.clearRect(0, 0, width, height)
  context.fillStyle = ink.colour
  const dash = dashed ? DASH_PX * ink.zeroPx : width
  for (let x = 0; x < width; x += 2 * dash) context.fillRect(x, 0, dash, ink.zeroPx)
}
