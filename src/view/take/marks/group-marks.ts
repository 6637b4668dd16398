import { printTime } from '../../words/time-text'
import { type TimeView, xOfFrame } from '../time/time-view'
import type { Mark, MarkKind } from './take-marks'

/** Marks that would overlap, shown as one. */
export interface MarkGroup {
  /** The first of them. */
  readonly first: Mark
  readonly last: Mark
  /** How many of each kind, in the order in which they come. */
  readonly counts: ReadonlyMap<MarkKind, number>
  /** In the middle of them, CSS pixels. */
  readonly x: number
}

/** An end of the loop is narrow, and dragged where it stands: it joins others only this near to them, CSS pixels. */
const LOOP_APART_PX = 9

/**
 * The marks that are seen, those nearer than `leastApartPx` to the first of a group in it. Counted from the take's start,
 * so that moving the view regroups nothing.
 * @param marks in the order of the take
 */
export function markGroups(
  marks: readonly Mark[],
  view: TimeView,
  widthPx: number,
  leastApartPx: number,
): readonly MarkGroup[] {
  if (!(widthPx > 0)) return []
  const x = (mark: Mark) => xOfFrame(view, mark.frame, widthPx)
  const groups: Mark[][] = []
  for (const mark of marks) {
    if (isLoopEnd(mark)) continue
    const group = groups.at(-1)
    const [first] = group ?? []
    if (group && first && x(mark) - x(first) < leastApartPx) group.push(mark)
    else groups.push([mark])
  }
  for (const end of marks.filter(isLoopEnd)) {
    const near = groups.find((group) => group.some((mark) => Math.abs(x(mark) - x(end)) < LOOP_APART_PX))
    if (near) near.push(end)
    else groups.push([end])
  }
  for (const group of groups) group.sort(inOrder)
  groups.sort(([a], [b]) => (a && b ? inOrder(a, b) : 0))
  return groups.flatMap((group): MarkGroup[] => {
    const [first] = group
    const last = group.at(-1)
    if (!first || !last || x(last) < 0 || x(first) > widthPx) return []
    const counts = new Map<MarkKind, number>()
    for (const { kind } of group) counts.set(kind, (counts.get(kind) ?? 0) + 1)
    return [{ first, last, counts, x: (x(first) + x(last)) / 2 }]
  })
}

function isLoopEnd({ kind }: Mark): boolean {
  return kind === 'loop-start' || kind === 'loop-end'
}

function inOrder(a: Mark, b: Mark): number {
  return a.frame - b.frame
}

const WORDS: Readonly<Record<MarkKind, readonly [one: string, many: string]>> = {
  sibilant: ['Sibilant', 'sibilants'],
  clipped: ['Clipped samples', 'places of clipped samples'],
  'loop-start': ['Loop start', 'loop starts'],
  'loop-end': ['Loop end', 'loop ends'],
}

/** A group in words, with its time. */
export function groupWords({ first, last, counts }: MarkGroup, sampleRate: number): string {
  const time = (mark: Mark) => printTime(mark.frame / sampleRate, 2)
  const words = Array.from(counts, ([kind, count]) =>
    count === 1 ? WORDS[kind][0] : `${count} ${WORDS[kind][1]}`,
  )
  const sentence = words.map((each, k) => (k === 0 ? each : each.toLowerCase())).join(', ')
  return first === last ? `${sentence} at ${time(first)}` : `${sentence}, ${time(first)} to ${time(last)}`
}
