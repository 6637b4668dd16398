import { type PointerEvent as ReactPointerEvent, useEffect, useLayoutEffect, useRef } from 'react'
import type { NumberParameter } from '../../core'
import { followPointer } from '../hooks/follow-pointer'
import { pxOfRem } from '../hooks/px-of-rem'
import { pressSize } from './key-steps'
import { positionOf, valueAt } from './positions'

/** Width of the ring, rem: as in its styles. */
const RING_REM = 1
/** This far beside the ring still takes hold of it, CSS pixels. */
const BESIDE_PX = 3
/** A finger is never quite still: its direction counts from here on, CSS pixels. */
const TAP_SLOP_PX = 4

/** How far along its travel a parameter goes with one small move of its control. */
function shareOfStep({ scale, step, min, max }: NumberParameter): number {
  return scale === 'linear' ? step / (max - min) : step
}

/**
 * Travel for each pixel that a slider is dragged, as a share of all: its ring follows the pointer, unless a pixel would
 * then be more than a small move of the parameter.
 */
export function sharePerPx(parameter: NumberParameter, widthPx: number): number {
  return Math.min(1 / Math.max(1, widthPx), shareOfStep(parameter))
}

interface Slide {
  readonly parameter: NumberParameter
  readonly value: number
  onChange(value: number): void
  /** The pointer is let go. */
  onRest(): void
}

/**
 * Drags a native slider by a small move of its parameter for a pixel at most, with Alt a tenth of it, in place of the
 * browser, which goes through the whole range over the length of the line. A press beside the ring takes it there. A
 * finger that swipes across a slider scrolls the page and leaves it alone; a tap counts once it is lifted.
 */
export function useSlide(slide: Slide) {
  const latest = useRef(slide)
  useLayoutEffect(() => {
    latest.current = slide
  })
  const isPressed = useRef(false)
  const stop = useRef<() => void>(undefined)
  // What is no longer there is not dragged.
  useEffect(() => () => stop.current?.(), [])
  const setTo = (position: number) => latest.current.onChange(valueAt(latest.current.parameter, position))
  return {
    /** Whether what the browser itself asks for is of a press, which is followed here. */
    isPressed: () => isPressed.current,
    down(event: ReactPointerEvent<HTMLInputElement>) {
      if (isPressed.current || event.button !== 0) return
      const { parameter, value } = latest.current
      const { left, width } = event.currentTarget.getBoundingClientRect()
      const ring = RING_REM * pxOfRem()
      const travelPx = width - ring
      const at = (x: number) => (x - left - ring / 2) / Math.max(1, travelPx)
      const pressed = { x: event.clientX, y: event.clientY }
      let position = positionOf(parameter, value)
      const isOnRing = Math.abs(at(pressed.x) - position) * travelPx <= ring / 2 + BESIDE_PX
      let lastX = pressed.x
      let way: 'along' | 'across' | null = null
      const take = () => {
        way = 'along'
        if (isOnRing) return
        position = at(pressed.x)
        setTo(position)
      }
      isPressed.current = true
      if (event.pointerType === 'mouse') take()
      const end = () => {
        // Firefox asks once more as the finger is lifted, or for the old position where the touch is cancelled.
        setTimeout(() => {
          isPressed.current = false
        })
        latest.current.onRest()
      }
      stop.current = followPointer(event, {
        onMove(moved) {
          if (way === null) {
            const [along, across] = [Math.abs(moved.clientX - pressed.x), Math.abs(moved.clientY - pressed.y)]
            if (Math.max(along, across) < TAP_SLOP_PX) return
            if (along > across) take()
            else way = 'across'
          }
          if (way !== 'along') return
          const fine = moved.altKey ? pressSize({ shiftKey: false, altKey: true }) : 1
          position += (moved.clientX - lastX) * fine * sharePerPx(latest.current.parameter, travelPx)
          lastX = moved.clientX
          setTo(position)
        },
        onUp() {
          if (way === null) take()
          end()
        },
        onCancel: end,
      })
    },
  }
}
