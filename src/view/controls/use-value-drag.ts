import { type PointerEvent, useEffect, useLayoutEffect, useRef } from 'react'
import type { NumberParameter } from '../../core'
import { followPointer } from '../hooks/follow-pointer'
import { pressSize } from './key-steps'
import { asPrinted } from './positions'

interface DraggedValue {
  readonly parameter: NumberParameter
  readonly value: number
  /** The value so many CSS pixels right of and below the place of another one. */
  valueAt(start: number, dx: number, dy: number): number
  onChange(value: number): void
  /** The pointer goes down, and is let go. */
  onRest(): void
}

/**
 * Sets a number by dragging a handle that stands at its value in a picture, with Alt a tenth as far. The scale on which a
 * drag begins is kept until it ends.
 * @returns what the handle does when the pointer goes down on it
 */
export function useValueDrag(dragged: DraggedValue): (event: PointerEvent) => void {
  const latest = useRef(dragged)
  useLayoutEffect(() => {
    latest.current = dragged
  })
  const stop = useRef<() => void>(undefined)
  // What is no longer there is not dragged.
  useEffect(() => () => stop.current?.(), [])
  return (event) => {
    if (event.button !== 0) return
    event.preventDefault()
    event.stopPropagation()
    const { parameter, value, valueAt } = latest.current
    let last = { x: event.clientX, y: event.clientY }
    let [dx, dy] = [0, 0]
    latest.current.onRest()
    const end = () => latest.current.onRest()
    stop.current = followPointer(event, {
      onMove({ clientX: x, clientY: y, altKey }) {
        const fine = pressSize({ shiftKey: false, altKey })
        dx += (x - last.x) * fine
        dy += (y - last.y) * fine
        last = { x, y }
        latest.current.onChange(asPrinted(parameter, valueAt(value, dx, dy)))
      },
      onUp: end,
      onCancel: end,
    })
  }
}
