import { type PointerEvent, type RefObject, useCallback, useRef, useState } from 'react'
import { stageDefinitions } from '../../core'
import { moveStage } from '../../session/chain/chain-edits'
import { useApp } from '../context/app-context'
import { followPointer } from '../hooks/follow-pointer'
import { nearestPlace } from './nearest-place'

/** Dragging stages to another place. Touch drags start sideways, for up and down scrolls the page. */
export interface Reorder {
  readonly list: RefObject<HTMLOListElement | null>
  /** The same function for as long as the chain is shown. */
  begin(event: PointerEvent<HTMLElement>, stageId: string): void
  dropOf(index: number): Drop | undefined
}

/** What a stage shows of the drag going on. */
export type Drop = 'moving' | 'before' | 'after'

/** A press that moves less than this is a click, CSS pixels. */
const DRAG_DISTANCE_PX = 8

interface Drag {
  readonly from: number
  readonly to: number
}

/** Lets stages be dragged along the chain. A drag becomes one change when it is let go; Escape cancels it. */
export function useReorder(announce: (text: string) => void): Reorder {
  const { chain } = useApp()
  const list = useRef<HTMLOListElement>(null)
  const isPressed = useRef(false)
  const [drag, setDrag] = useState<Drag | null>(null)

  const begin = useCallback(
    (down: PointerEvent<HTMLElement>, stageId: string) => {
      if (down.button !== 0 || isPressed.current) return
      isPressed.current = true
      const from = chain.getState().chain.stages.findIndex(({ id }) => id === stageId)
      const boxes = Array.from(list.current?.querySelectorAll('[data-stage-id]') ?? [], (item) =>
        item.getBoundingClientRect(),
      )
      const keys = new AbortController()
      let current: Drag | null = null
      const show = (next: Drag | null) => {
        current = next
        setDrag(next)
      }
      const end = () => {
        isPressed.current = false
        keys.abort()
        show(null)
      }
      const stop = followPointer(down, {
        onMove: ({ pointerId, clientX, clientY }) => {
          const moved = Math.hypot(clientX - down.clientX, clientY - down.clientY)
          if (!current && moved < DRAG_DISTANCE_PX) return
          // By the list, which stays: the press of a stage that was dragged is no click on it.
          if (!current) list.current?.setPointerCapture(pointerId)
          show({ from, to: nearestPlace(boxes, clientX, clientY) })
        },
        onUp: () => {
          const done = current
          end()
          const { stages } = chain.getState().chain
          const stage = stages.find(({ id }) => id === stageId)
          if (!stage || !done || done.to === done.from) return
          chain.getState().edit(moveStage(stageId, done.to))
          announce(`${stageDefinitions[stage.kind].label}, position ${done.to + 1} of ${stages.length}`)
        },
        onCancel: end,
      })
      window.addEventListener('keydown', (event) => event.key === 'Escape' && stop(), { signal: keys.signal })
    },
    [chain, announce],
  )

  const dropOf = (index: number) => {
    if (!drag) return undefined
    if (index === drag.from) return 'moving'
    if (index !== drag.to) return undefined
    return drag.to < drag.from ? 'before' : 'after'
  }

  return { list, begin, dropOf }
}
