import type { Steps } from '../../sound/steps'

/**
 * The element of `values` that would stand at `index` if they were sorted, in steps of one pass over what is still in
 * question. Brings `values` into another order.
 * Source: C. A. R. Hoare, "Algorithm 65: Find", Communications of the ACM 4(7), 1961.
 *
 * @param values no NaN
 * @param index 0 to the number of values less 1
 * @returns undefined for another index
 */
export function* nthSmallestSteps(values: Float64Array, index: number): Steps<number | undefined> {
  let from = 0
  let to = values.length - 1
  while (from < to) {
    const [left, right] = partition(values, from, to, values[(from + to) >> 1] ?? 0)
    if (index <= left) to = left
    else if (index >= right) from = right
    else break
    yield 1 - (to - from) / values.length
  }
  return values[index]
}

/**
 * Moves values up to `pivot` before those from it on, within `from` .. `to`. Ends of both parts; what is between them,
 * if anything, equals the pivot.
 */
function partition(values: Float64Array, from: number, to: number, pivot: number): [number, number] {
  let left = from
  let right = to
  while (left <= right) {
    while ((values[left] ?? pivot) < pivot) left++
    while ((values[right] ?? pivot) > pivot) right--
    if (left > right) break
    const value = values[left] ?? 0
    values[left] = values[right] ?? 0
    values[right] = value
    left++
    right--
  }
  return [right, left]
}
