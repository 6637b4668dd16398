import { type PointerEvent, useRef } from 'react'

/** A finger is never quite still: its direction counts from here on, CSS pixels. */
const TAP_SLOP_PX = 4

/** A finger on a slider. */
interface Touch {
  readonly pointerId: number
  readonly x: number
  readonly y: number
  direction: 'along' | 'across' | null
  /** The position last asked for while its direction was not known. */
  asked: number | null
}

/**
 * Keeps a slider where it is until it is known what a finger on it is about to do: browsers set native sliders the
 * moment they are touched, also where a swipe begins that scrolls the page. A finger that moves along the slider sets
 * it, a tap once it is lifted, a swipe across it never. Anything but a finger or pen sets it at once.
 * @param onSlide given every position that counts
 */
export function useTouchSlide(onSlide: (position: number) => void) {
  const touch = useRef<Touch | null>(null)
  const ended = ({ pointerId }: PointerEvent): Touch | null => {
    const held = touch.current
    if (held?.pointerId !== pointerId) return null
    touch.current = null
    return held
  }
  return {
    /** Takes a position that the native slider asks for. */
    ask(position: number) {
      const held = touch.current
      if (!held || held.direction === 'along') onSlide(position)
      else held.asked = position
    },
    down({ pointerType, pointerId, clientX: x, clientY: y }: PointerEvent) {
      if (pointerType !== 'mouse' && !touch.current)
        touch.current = { pointerId, x, y, direction: null, asked: null }
    },
    move({ pointerId, clientX, clientY }: PointerEvent) {
      const held = touch.current
      if (held?.pointerId !== pointerId || held.direction) return
      const [along, across] = [Math.abs(clientX - held.x), Math.abs(clientY - held.y)]
      if (Math.max(along, across) >= TAP_SLOP_PX) held.direction = along > across ? 'along' : 'across'
    },
    up(event: PointerEvent) {
      const tap = ended(event)
      if (tap && !tap.direction && tap.asked !== null) onSlide(tap.asked)
    },
    cancel: ended,
  }
}
