import { type PointerEvent, useRef } from 'react'

/** A finger is never quite still: its direction counts from here on, CSS pixels. */
const TAP_SLOP_PX = 4

/** A finger on a slider. */
interface Touch {
  readonly pointerId: number
  readonly x: number
  readonly y: number
  direction: 'along' | 'across' | null
  /** The position last asked for while the direction was not known. */
  asked: number | null
}

/**
 * Keeps a slider where it is until it is known what a finger on it is about to do: browsers set native sliders the
 * moment they are touched, also where a swipe begins that scrolls the page. A finger that moves along the slider sets
 * it, a tap once it is lifted, a swipe across it never. The mouse sets it at once.
 * @param onSlide given every position that counts
 */
export function useTouchSlide(onSlide: (position: number) => void) {
  const touch = useRef<Touch | null>(null)
  const end = (pressed: Touch) => {
    pressed.direction ??= 'across'
    // Firefox asks once more as the finger is lifted, or for the old position where the touch is cancelled.
    setTimeout(() => {
      touch.current = null
    })
  }
  const touchOf = ({ pointerId }: PointerEvent) =>
    touch.current?.pointerId === pointerId ? touch.current : null
  return {
    /** Takes a position that the native slider asks for. */
    ask(position: number) {
      const pressed = touch.current
      if (!pressed || pressed.direction === 'along') onSlide(position)
      else pressed.asked = position
    },
    down({ pointerType, pointerId, clientX: x, clientY: y }: PointerEvent) {
      if (pointerType !== 'mouse' && !touch.current)
        touch.current = { pointerId, x, y, direction: null, asked: null }
    },
    move(event: PointerEvent) {
      const pressed = touchOf(event)
      if (!pressed || pressed.direction) return
      const [along, across] = [Math.abs(event.clientX - pressed.x), Math.abs(event.clientY - pressed.y)]
      if (Math.max(along, across) >= TAP_SLOP_PX) pressed.direction = along > across ? 'along' : 'across'
    },
    up(event: PointerEvent) {
      const pressed = touchOf(event)
      if (!pressed) return
      if (!pressed.direction && pressed.asked !== null) onSlide(pressed.asked)
      end(pressed)
    },
    cancel(event: PointerEvent) {
      const pressed = touchOf(event)
      if (pressed) end(pressed)
    },
  }
}
