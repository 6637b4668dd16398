/** One section of a Butterworth filter: first order (no q) or second order. */
export type ButterworthSection = { readonly order: 1 } | { readonly order: 2; readonly q: number }

/**
 * Sections of a Butterworth filter of any `order` from 1 up, lowest q first so that no section before the last
 * overshoots more than it must. Source: the poles lie evenly on a circle, q_k = 1 / (2 sin((2k - 1) pi / (2n)));
 * S. Butterworth, "On the Theory of Filter Amplifiers" (1930), as tabulated in filter handbooks.
 */
export function butterworthSections(order: number): ButterworthSection[] {
  const sections: ButterworthSection[] = order % 2 === 1 ? [{ order: 1 }] : []
  for (let k = Math.floor(order / 2); k >= 1; k--) {
    sections.push({ order: 2, q: 1 / (2 * Math.sin(((2 * k - 1) * Math.PI) / (2 * order))) })
  }
  return sections
}
