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
  const tinted = Math.round(OPAQUE * tint)
  const tintEnd = Math.round(top)
  const pieceTop = Math.floor(top)
  const pieceEnd = Math.ceil(bottom)
  const stride = width * 4
  const firstOpacity = x * 4 + 3
  for (let column = firstOpacity; column < firstOpacity + pieceWidth * 4; column += 4) {
    for (let y = 0, at = column; y < height; y++, at += stride) {
      if (y < zeroPx) data[at] = OPAQUE
      else if (y < pieceTop || y >= pieceEnd) data[at] = y < tintEnd ? tinted : 0
      else {
        const covered = Math.min(bottom, y + 1) - Math.max(top, y)
        data[at] = OPAQUE * covered + (y < tintEnd ? tinted * (1 - covered) : 0)
      }
    }
  }
}
