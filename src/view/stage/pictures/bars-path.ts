/** Where bars stand, CSS pixels. */
interface BarsArea {
  readonly left: number
  readonly right: number
  readonly bottom: number
  /** Of the highest bar. */
  readonly height: number
}

/** The outline of bars side by side, as an SVG path; null where all of them are empty. */
export function barsPath(
  shares: ArrayLike<number>,
  { left, right, bottom, height }: BarsArea,
): string | null {
  let most = 0
  for (let i = 0; i < shares.length; i++) most = Math.max(most, shares[i] ?? 0)
  if (most === 0) return null
  const width = (right - left) / shares.length
  const tops = Array.from(
    shares,
    (share, i) => `V${round(bottom - (share / most) * height)}H${round(left + (i + 1) * width)}`,
  )
  return `M${round(left)},${round(bottom)}${tops.join('')}V${round(bottom)}Z`
}

function round(px: number): number {
  return Math.round(px * 10) / 10
}
