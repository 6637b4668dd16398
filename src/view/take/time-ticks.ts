import { scaleLinear } from 'd3-scale'
import { printTime } from './time-text'
import type { TimeView } from './time-view'

export interface TimeTick {
  readonly x: number
  readonly label: string
}

const LEAST_SPACING_PX = 90

/** Ticks at round times, labelled as finely as they are apart. */
export function timeTicks(view: TimeView, sampleRate: number, widthPx: number): readonly TimeTick[] {
  if (!(widthPx > 0)) return []
  const scale = scaleLinear([view.from / sampleRate, view.to / sampleRate], [0, widthPx])
  const times = scale.ticks(Math.max(1, Math.floor(widthPx / LEAST_SPACING_PX)))
  const step = (times[1] ?? 1) - (times[0] ?? 0)
  const digits = step >= 1 ? 0 : step >= 0.1 ? 1 : 2
  return times.map((seconds) => ({ x: scale(seconds), label: printTime(seconds, digits) }))
}
