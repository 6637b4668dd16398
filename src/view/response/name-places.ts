import type { Handle } from './handles'
import type { Plot } from './plot'

/** A handle with the middle of its name, CSS pixels from the top of the plot. */
export interface NamedHandle extends Handle {
  readonly nameTop: number
}

/** Size of a name with its frame, CSS pixels at the usual text size. */
export const NAME_PX = { width: 24, height: 18 } as const
/** From what it stands beside to the edge of a name, and between two names, CSS pixels. */
const GAP_PX = 5
/** Further rows that are tried, each a name further away. */
const ROWS = 4

/**
 * Handles with their names where these cover neither the combined response nor one another, as far as there is room:
 * beyond the 0 dB line, where the response hardly ever is, or else beyond the head of the stem.
 * @param magnitudesDb the combined response at the frequencies of the plot
 */
export function withNamePlaces(
  handles: readonly Handle[],
  plot: Plot,
  magnitudesDb: Float64Array,
): NamedHandle[] {
  const placed: NamedHandle[] = []
  for (const handle of handles) {
    const size = { width: NAME_PX.width * plot.textScale, height: NAME_PX.height * plot.textScale }
    const curve = curveWithin(plot, magnitudesDb, handle.left - size.width / 2, handle.left + size.width / 2)
    const isFree = (top: number) =>
      isApart(top, size.height, curve.top, curve.bottom) &&
      placed.every(
        (other) =>
          Math.abs(other.left - handle.left) >= size.width ||
          Math.abs(other.nameTop - top) >= size.height + 1,
      )
    const candidates = candidatesOf(handle, plot, size.height)
    const nameTop = candidates.find(isFree) ?? candidates[0] ?? handle.zeroTop
    placed.push({ ...handle, nameTop })
  }
  return placed
}

/** Middles of a name within the plot, the best first: its rows beyond 0 dB, in turn with those beyond the head. */
function candidatesOf({ top, zeroTop }: Handle, plot: Plot, height: number): number[] {
  const away = top <= zeroTop ? 1 : -1
  const first = GAP_PX + height / 2
  const rows = Array.from({ length: ROWS }, (_, row) => first + row * (height + GAP_PX))
  const [bottomEdge = 0, topEdge = 0] = plot.y.range()
  return rows
    .flatMap((far) => [zeroTop + away * far, top - away * (far + GAP_PX)])
    .filter((middle) => middle - height / 2 >= topEdge && middle + height / 2 <= bottomEdge)
}

/** Whether a name of this height around `middle` leaves clear what runs from `top` to `bottom`. */
function isApart(middle: number, height: number, top: number, bottom: number): boolean {
  return middle + height / 2 + 2 <= top || middle - height / 2 - 2 >= bottom
}

/** How far up and down the combined response goes between two places of the plot, CSS pixels. */
function curveWithin(
  { frequenciesX, y }: Plot,
  magnitudesDb: Float64Array,
  left: number,
  right: number,
): { readonly top: number; readonly bottom: number } {
  let [top, bottom] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (let i = 0; i < frequenciesX.length; i++) {
    // The points next to both ends too: the line runs on to them.
    if ((frequenciesX[i + 1] ?? right) < left || (frequenciesX[i - 1] ?? left) > right) continue
    const at = y(magnitudesDb[i] ?? 0)
    top = Math.min(top, at)
    bottom = Math.max(bottom, at)
  }
  return { top, bottom }
}
