import { type PointerEvent, useRef } from 'react'

/** Fingers nearer to one another than this would make the zoom jump, pixels. */
const LEAST_APART_PX = 24

interface Pinch {
  /** How much further apart the fingers are than they were. */
  readonly factor: number
  /** Half way between them, as they were. */
  readonly centreX: number
  /** How far that middle has moved since. */
  readonly shiftX: number
}

/** What two fingers did when they went from one pair of places to another; only along the take counts. */
export function pinchBetween(
  [a0, b0]: readonly [number, number],
  [a1, b1]: readonly [number, number],
): Pinch {
  const apart = (a: number, b: number) => Math.max(LEAST_APART_PX, Math.abs(a - b))
  const centreX = (a0 + b0) / 2
  return { factor: apart(a1, b1) / apart(a0, b0), centreX, shiftX: (a1 + b1) / 2 - centreX }
}

/** Follows the fingers on an element. Each handler says whether a pinch is under way. */
export function usePinch(onPinch: (pinch: Pinch) => void) {
  const fingers = useRef(new Map<number, number>())
  const places = (): readonly [number, number] | null => {
    const [a, b] = fingers.current.values()
    return a === undefined || b === undefined ? null : [a, b]
  }
  return {
    down(event: PointerEvent): boolean {
      fingers.current.set(event.pointerId, event.clientX)
      return fingers.current.size > 1
    },
    move(event: PointerEvent): boolean {
      if (!fingers.current.has(event.pointerId)) return false
      const before = places()
      fingers.current.set(event.pointerId, event.clientX)
      const now = places()
      if (before && now) onPinch(pinchBetween(before, now))
      return now !== null
    },
    up(event: PointerEvent): void {
      fingers.current.delete(event.pointerId)
    },
  }
}
