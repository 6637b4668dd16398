import { type RefObject, useEffect } from 'react'
import type { TimeViewControl } from './use-time-view'

/** How far the wheel turns for a zoom by e, and for a move by the width of the view; pixels as browsers count them. */
const ZOOM_PX = 300
const MOVE_PX = 1000

/** Ctrl and wheel, or a pinch on a touchpad, zooms about the pointer; sideways scrolling moves the view. */
export function useZoomWheel(
  surface: RefObject<HTMLElement | null>,
  time: TimeViewControl,
  frameAt: (clientX: number) => number,
): void {
  useEffect(() => {
    const element = surface.current
    if (!element) return
    const wheel = (event: WheelEvent) => {
      const sideways = event.shiftKey ? event.deltaX || event.deltaY : event.deltaX
      const upright = event.shiftKey ? 0 : event.deltaY
      if (event.ctrlKey || event.metaKey) {
        event.preventDefault()
        time.zoom(Math.exp(-event.deltaY / ZOOM_PX), frameAt(event.clientX))
      } else if (!time.isWhole && Math.abs(sideways) > Math.abs(upright)) {
        event.preventDefault()
        time.move((sideways * (time.view.to - time.view.from)) / MOVE_PX)
      }
    }
    // Not passive, or the page would zoom as well.
    element.addEventListener('wheel', wheel, { passive: false })
    return () => element.removeEventListener('wheel', wheel)
  })
}
