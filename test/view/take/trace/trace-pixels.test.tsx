import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { coverPixels } from '../../../../src/view/take/trace/trace-pixels'

const [WIDTH, HEIGHT] = [9, 24]

/** Opacities, 0 to 255, of each column from top to foot. */
function covered(piece: Parameters<typeof coverPixels>[1], zeroPx: number, tint: number): number[][] {
  const data = new Uint8ClampedArray(WIDTH * HEIGHT * 4)
  coverPixels({ data, width: WIDTH, height: HEIGHT }, piece, zeroPx, tint)
  return Array.from({ length: WIDTH }, (_, x) =>
    Array.from({ length: HEIGHT }, (_, y) => data[(y * WIDTH + x) * 4 + 3] ?? Number.NaN),
  )
}

describe('the pixels of a trace', () => {
  it('are a line at 0 dB, tint below it, and the line along the trace', () => {
    const columns = covered({ x: 2, width: 3, top: 6, bottom: 8 }, 2, 0.2)
    const drawn = [255, 255, 51, 51, 51, 51, 255, 255, ...Array(16).fill(0)]
    const empty = Array(HEIGHT).fill(0)
    expect(columns).toEqual([empty, empty, drawn, drawn, drawn, empty, empty, empty, empty])
  })

  it('are covered in part where a line ends within them, over the tint', () => {
    const [column] = covered({ x: 0, width: 1, top: 5.5, bottom: 6.75 }, 1, 0.2)
    // Half a pixel of line over 20 %: 60 %.
    expect(column?.slice(4, 8)).toEqual([51, 153, 191, 0])
  })

  it('hold as much ink as a line is thick, wherever it lies', () => {
    const line = fc.tuple(
      fc.double({ min: 1, max: HEIGHT - 5, noNaN: true }),
      fc.double({ min: 1, max: 4, noNaN: true }),
    )
    fc.assert(
      fc.property(line, ([top, thickness]) => {
        const [column = []] = covered({ x: 0, width: 1, top, bottom: top + thickness }, 1, 0)
        const ink = column.slice(1).reduce((sum, opacity) => sum + opacity / 255, 0)
        expect(Math.abs(ink - thickness)).toBeLessThan(HEIGHT / 255)
      }),
    )
  })
})
