import { availableParallelism, loadavg } from 'node:os'
import type { Drag, Drags } from './dragging'
import { milliseconds, printCells, reached } from './table'

/** A figure of a drag, and the most it should be at the 95th percentile, ms; null where nothing is wanted of it. */
interface Figure {
  readonly what: string
  readonly wantedMs: number | null
  readonly of: (drag: Drag) => readonly number[]
}

const FRAME: Figure = { what: 'move to end of its frame', wantedMs: 17, of: ({ frameMs }) => frameMs }
const WORK: Figure = { what: 'main thread, a move', wantedMs: null, of: ({ workMs }) => [workMs] }
const FIGURES: readonly Figure[] = [
  FRAME,
  WORK,
  { what: 'move to all of its lanes', wantedMs: 60, of: ({ lanesMs }) => lanesMs },
  { what: 'letting go to all figures', wantedMs: 1500, of: ({ settledMs }) => [settledMs] },
  { what: 'longest task', wantedMs: 50, of: ({ longTasksMs }) => [Math.max(0, ...longTasksMs)] },
]

/**
 * Prints what dragging is like: each figure of each drag, all its repetitions taken together. Other work on the
 * machine makes all of it slower, the floor too: hence its load.
 */
export function printDragging(all: readonly Drags[]): void {
  const lines = all.flatMap(({ what, take, reports }) =>
    (take === null ? [FRAME, WORK] : FIGURES).map((figure) => {
      const values = reports.flatMap(figure.of).sort((a, b) => a - b)
      const [median, p95] = [at(values, 0.5), at(values, 0.95)]
      const wanted =
        figure.wantedMs === null ? '' : `${figure.wantedMs} ms ${reached(p95 <= figure.wantedMs)}`
      return [what, take ?? '', figure.what, milliseconds(median), milliseconds(p95), wanted]
    }),
  )
  printCells([['dragged', 'take', 'what', 'median', 'p95', 'wanted'], ...lines])
  console.log(`${availableParallelism()} processors, load of the last minute ${loadavg()[0]?.toFixed(1)}`)
}

/** The value below which `share` of the sorted `values` lie; the largest of only a few. */
function at(values: readonly number[], share: number): number {
  return values[Math.min(values.length - 1, Math.floor(share * values.length))] ?? Number.NaN
}
