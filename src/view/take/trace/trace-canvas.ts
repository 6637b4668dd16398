import { type ColumnRange, edgePieces, type TraceLayout } from './trace-geometry'
import { coverPixels } from './trace-pixels'

/** What a trace is drawn with, taken from the styles of its canvas. */
interface TraceInk {
  /** How much of the ink lies on what hangs above the line, 0 to 1. */
  readonly tint: number
  /** Thickness of the line at 0 dB, and of the line along the trace, device pixels. */
  readonly zeroPx: number
  readonly linePx: number
}

/** Width of a column of the trace, CSS pixels. */
const COLUMN_PX = 2
/** Dashes of the line at 0 dB, and the gaps between them, CSS pixels. */
const DASH_PX = 4

/**
 * The canvas of a lane, drawn on pixel by pixel: rectangles, of which a trace has hundreds, would be painted by the
 * browser one after the other, on the thread of the page.
 */
export class TraceCanvas {
  private readonly ink: TraceInk
  private readonly context: CanvasRenderingContext2D
  private readonly image: ImageData

  /** Takes size from the canvas, and colour, `fill-opacity` and `stroke-width` from its styles. */
  constructor(canvas: HTMLCanvasElement, context: CanvasRenderingContext2D) {
    const { color, fillOpacity, strokeWidth } = getComputedStyle(canvas)
    this.ink = {
      tint: Number.parseFloat(fillOpacity),
      zeroPx: Math.max(1, Math.round(devicePixelRatio)),
      linePx: Math.max(1, (Number.parseFloat(strokeWidth) || 1) * devicePixelRatio),
    }
    this.context = context
    context.fillStyle = color
    context.fillRect(0, 0, canvas.width, canvas.height)
    this.image = context.getImageData(0, 0, canvas.width, canvas.height)
  }

  /** How a trace that reaches down `rangeDb` is laid out on it. */
  layout(rangeDb: number): TraceLayout {
    const { width, height } = this.image
    const { zeroPx, linePx } = this.ink
    return { widthPx: width, heightPx: height, columnPx: COLUMN_PX * zeroPx, zeroPx, linePx, rangeDb }
  }

  /** Draws a trace on some pixels, from left to right, over whatever was there. */
  drawTrace(columns: Float32Array, layout: TraceLayout, pixels: ColumnRange): void {
    for (const piece of edgePieces(columns, layout, pixels))
      coverPixels(this.image, piece, layout.zeroPx, this.ink.tint)
    this.show(pixels)
  }

  /** Draws a lane without a trace: the line at 0 dB, dashed where the stage does nothing. */
  drawNoTrace(dashed: boolean): void {
    const { image, ink } = this
    const { width } = image
    const dash = dashed ? DASH_PX * ink.zeroPx : width
    for (let x = 0; x < width; x += dash) {
      const isGap = (x / dash) % 2 === 1
      const piece = { x, width: Math.min(dash, width - x), top: 0, bottom: 0 }
      coverPixels(image, piece, isGap ? 0 : ink.zeroPx, 0)
    }
    this.show({ from: 0, to: width })
  }

  private show({ from, to }: ColumnRange): void {
    if (from < to) this.context.putImageData(this.image, 0, 0, from, 0, to - from, this.image.height)
  }
}
