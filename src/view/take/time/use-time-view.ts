import { useMemo } from 'react'
import { type FrameRange, frameCount, type Sound } from '../../../core'
import { useApp, useView } from '../../context/app-context'
import { around, moved, type TimeView, wholeTake, zoomed } from './time-view'

/** The shortest stretch that can be seen, seconds: an attack of 0.5 ms is a tenth of it, a cycle of 200 Hz all of it. */
const LEAST_SECONDS = 0.005

/** The length of a view is a difference of two large numbers. */
const ROUNDING = 1e-6

/** What of the take is seen, and ways to see another part of it. */
export interface TimeViewControl {
  readonly view: TimeView
  readonly isWhole: boolean
  /** Nothing shorter can be seen. */
  readonly isNearest: boolean
  /** About the frame `anchor`; the middle of the view when left out. */
  zoom(factor: number, anchor?: number): void
  move(byFrames: number): void
  showAll(): void
  show(range: FrameRange): void
}

/** The view of `sound`. */
export function useTimeView(sound: Sound | null): TimeViewControl {
  const { view: store } = useApp()
  const seen = useView((state) => state.seen)
  const frames = sound ? frameCount(sound) : 1
  const leastFrames = Math.min(frames, LEAST_SECONDS * (sound?.sampleRate ?? 1))
  // The same object while the view is the same: every picture of the take hangs on it.
  return useMemo(() => {
    const whole = wholeTake(frames)
    const change = (next: (view: TimeView) => TimeView) => {
      const view = next(store.getState().seen ?? whole)
      store.setState({ seen: isWhole(view, frames) ? null : view })
    }
    const view = seen ?? whole
    return {
      view,
      isWhole: isWhole(view, frames),
      isNearest: view.to - view.from <= leastFrames * (1 + ROUNDING),
      zoom: (factor, anchor) =>
        change((now) => zoomed(now, factor, anchor ?? (now.from + now.to) / 2, frames, leastFrames)),
      move: (byFrames) => change((now) => moved(now, byFrames, frames)),
      showAll: () => change(() => whole),
      show: (range) => change(() => around(range, frames, leastFrames)),
    }
  }, [store, seen, frames, leastFrames])
}

function isWhole({ from, to }: TimeView, frames: number): boolean {
  return to - from >= frames
}
