import { SPECTROGRAM_ROWS, TILE_COLUMNS } from '../../../core'
import type { TilePiece } from './tile-pieces'

/** The canvas of the spectrogram's lane: the ink of its styles, more of it where it is louder. */
export class SpectrogramCanvas {
  private readonly context: CanvasRenderingContext2D
  private readonly rgb: readonly number[]
  /** Pictures of the tiles that were drawn last. */
  private bitmaps = new Map<Uint8Array, HTMLCanvasElement>()

  /**
   * Takes its colour from the styles of the canvas.
   * @param ink how much of it each level gets, 0 to 255
   */
  constructor(
    private readonly canvas: HTMLCanvasElement,
    context: CanvasRenderingContext2D,
    private readonly ink: Uint8ClampedArray,
  ) {
    this.context = context
    this.rgb = rgbOf(getComputedStyle(canvas).color)
  }

  /** Draws pieces over whatever was there, from edge to edge of the canvas. */
  draw(pieces: readonly TilePiece[]): void {
    const { canvas, context } = this
    const bitmaps = new Map<Uint8Array, HTMLCanvasElement>()
    context.clearRect(0, 0, canvas.width, canvas.height)
    for (const { levels, fromColumn, toColumn, left, right } of pieces) {
      const bitmap = bitmaps.get(levels) ?? this.bitmaps.get(levels) ?? this.bitmapOf(levels)
      bitmaps.set(levels, bitmap)
      if (right <= left) continue
      const columns = toColumn - fromColumn
      context.drawImage(
        bitmap,
        fromColumn,
        0,
        columns,
        SPECTROGRAM_ROWS,
        left,
        0,
        right - left,
        canvas.height,
      )
    }
    this.bitmaps = bitmaps
  }

  /** A tile, one pixel for each level, the lowest frequency at the foot. */
  private bitmapOf(levels: Uint8Array): HTMLCanvasElement {
    const bitmap = document.createElement('canvas')
    bitmap.width = TILE_COLUMNS
    bitmap.height = SPECTROGRAM_ROWS
    const context = bitmap.getContext('2d')
    if (!context) return bitmap
    const image = context.createImageData(TILE_COLUMNS, SPECTROGRAM_ROWS)
    const { data } = image
    const { ink } = this
    const [red = 0, green = 0, blue = 0] = this.rgb
    for (let column = 0, from = 0; column < TILE_COLUMNS; column++) {
      for (let row = SPECTROGRAM_ROWS - 1; row >= 0; row--) {
        const at = 4 * (row * TILE_COLUMNS + column)
        data[at] = red
        data[at + 1] = green
        data[at + 2] = blue
        data[at + 3] = ink[levels[from++] ?? 0] ?? 0
      }
    }
    context.putImageData(image, 0, 0)
    return bitmap
  }
}

/** A colour of styles, however it is written, as red, green and blue from 0 to 255. */
function rgbOf(colour: string): readonly number[] {
  // On a canvas of its own: one that is read goes without the graphics processor.
  const context = document.createElement('canvas').getContext('2d', { willReadFrequently: true })
  if (!context) return []
  context.fillStyle = colour
  context.fillRect(0, 0, 1, 1)
  return Array.from(context.getImageData(0, 0, 1, 1).data)
}
