/** Which bins of a spectrum make up a row, and how much of each. */
interface Row {
  readonly firstBin: number
  readonly weights: Float64Array
}

/**
 * Adds the bins of power spectra up to rows that tile a range of frequencies in equal ratios. The power of a bin is
 * taken to be spread evenly over half a bin either side; a row narrower than two bins is given the power density at
 * its middle, straight between the two bins next to it, so that low rows do not come out as blocks. Either way noise
 * has the power that falls into the row. A sine is spread by the window over four bins: rows narrower than that show
 * less than all of it.
 */
export class RowWeights {
  private readonly rows: readonly Row[]

  /**
   * @param edgesHz lower edge of each row, ascending, and the upper edge of the last
   * @param binHz distance of two bins
   * @param binCount bins from 0 to half the sample rate, both included
   */
  constructor(edgesHz: Float64Array, binHz: number, binCount: number) {
    this.rows = Array.from({ length: edgesHz.length - 1 }, (_, row) => {
      const from = (edgesHz[row] ?? 0) / binHz
      const to = (edgesHz[row + 1] ?? 0) / binHz
      return to - from < 2 ? narrowRow(from, to, binCount) : wideRow(from, to, binCount)
    })
  }

  /** Adds the power of each row in `powers` to `sums`. */
  addTo(sums: Float64Array, powers: Float64Array): void {
    for (let row = 0; row < this.rows.length; row++) {
      const { firstBin, weights } = this.rows[row] ?? NO_ROW
      let sum = 0
      for (let i = 0; i < weights.length; i++) sum += (weights[i] ?? 0) * (powers[firstBin + i] ?? 0)
      sums[row] = (sums[row] ?? 0) + sum
    }
  }
}

const NO_ROW: Row = { firstBin: 0, weights: new Float64Array(0) }

/** A row from place `from` to place `to`, in bins. */
function narrowRow(from: number, to: number, binCount: number): Row {
  const middle = Math.min((from + to) / 2, binCount - 1)
  const firstBin = Math.min(Math.floor(middle), binCount - 2)
  const share = middle - firstBin
  return { firstBin, weights: Float64Array.of((1 - share) * (to - from), share * (to - from)) }
}

function wideRow(from: number, to: number, binCount: number): Row {
  const firstBin = Math.floor(from + 0.5)
  const lastBin = Math.min(Math.floor(to + 0.5), binCount - 1)
  const weights = Float64Array.from({ length: lastBin - firstBin + 1 }, (_, i) => {
    const bin = firstBin + i
    return Math.max(0, Math.min(to, bin + 0.5) - Math.max(from, bin - 0.5))
  })
  return { firstBin, weights }
}
