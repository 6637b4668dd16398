import { printTime } from '../../words/time-text'
import { type TimeView, xOfFrame } from '../time/time-view'

export interface TimeTick {
  readonly x: number
  readonly label: string
}

const LEAST_SPACING_PX = 80

/** Steps that are round on a clock, seconds. */
const STEPS = [
  0.0005, 0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 30, 60, 120, 300, 600, 1200,
  1800, 3600,
]

/** Ticks at times that are round on a clock, labelled as finely as they are apart. */
export function timeTicks(view: TimeView, sampleRate: number, widthPx: number): readonly TimeTick[] {
  if (!(widthPx > 0)) return []
  const leastStep = ((view.to - view.from) / sampleRate / widthPx) * LEAST_SPACING_PX
  const step = STEPS.find((seconds) => seconds >= leastStep) ?? 3600
  const digits = Math.max(0, Math.ceil(-Math.log10(step)))
  const first = Math.ceil(view.from / sampleRate / step)
  const last = Math.floor(view.to / sampleRate / step)
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => {
    const seconds = (first + i) * step
    return { x: xOfFrame(view, seconds * sampleRate, widthPx), label: printTime(seconds, digits) }
  })
}
