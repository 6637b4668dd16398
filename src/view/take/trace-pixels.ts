import type { EdgePiece } from './trace-geometry'

/** Pixels as the canvas has them: four bytes each, row by row. Of these only the opacity is written. */
interface Pixels {
  readonly data: Uint8ClampedArray
  readonly width: number
  readonly height: number
}

const OPAQUE = 255

/**
 * Writes how opaque the pixels under a piece of a trace are, top to foot: fully along the line at 0 dB, `zeroPx` thick,
 * and along the piece itself, of which the outermost pixels may be covered in part; `tint` of that between the two.
 */
export function coverPixels(
  { data, width, height }: Pixels,
  { x, width: pieceWidth, top, bottom }: EdgePiece,
  zeroPx: number,
  tint: number,
): void {
  const tintEnd = Math.round(top)
  for (let y = 0; y < height; y++) {
    const covered = y < zeroPx ? 1 : Math.max(0, Math.min(bottom, y + 1) - Math.max(top, y))
    const below = y < tintEnd ? tint : 0
    const opacity = OPAQUE * (covered + below * (1 - covered))
    const row = (y * width + x) * 4 + 3
    for (let i = row; i < row + pieceWidth * 4; i += 4) data[i] = opacity
  }
}
