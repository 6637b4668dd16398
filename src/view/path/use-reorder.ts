import { type PointerEvent, type RefObject, useCallback, useRef, useState } from 'react'
import { stageDefinitions } from '../../core'
import { moveStage } from '../../state/chain-edits'
import { useBench } from '../bench-context'
import { dropPlace } from './drop-place'

/** Dragging stages to another place. Touch drags start sideways, for up and down scrolls the page. */
export interface Reorder {
  readonly list: RefObject<HTMLOListElement | null>
  /** The same function for as long as the path is there. */
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

/** Lets stages be dragged along the path; a drag becomes one change when it is let go, and Escape forgets it. */
export function useReorder(announce: (text: string) => void): Reorder {
  const { chain } = useBench()
  const list = useRef<HTMLOListElement>(null)
  const [drag, setDrag] = useState<Drag | null>(null)

  const begin = useCallback(
    (down: PointerEvent<HTMLElement>, stageId: string) => {
      if (down.button !== 0) return
      const { stages } = chain.getState().chain
      const from = stages.findIndex(({ id }) => id === stageId)
      const boxes = Array.from(list.current?.querySelectorAll('[data-stage-id]') ?? [], (item) =>
        item.getBoundingClientRect(),
      )
      const listening = new AbortController()
      let current: Drag | null = null
      const show = (next: Drag | null) => {
        current = next
        setDrag(next)
      }
      const end = () => {
        listening.abort()
        show(null)
      }
      const on = { signal: listening.signal }
      window.addEventListener(
        'pointermove',
        (event) => {
          const moved = Math.hypot(event.clientX - down.clientX, event.clientY - down.clientY)
          if (!current && moved < DRAG_DISTANCE_PX) return
          show({ from, to: dropPlace(boxes, event.clientX, event.clientY) })
        },
        on,
      )
      window.addEventListener('pointercancel', end, on)
      window.addEventListener('keydown', (event) => event.key === 'Escape' && end(), on)
      window.addEventListener(
        'pointerup',
        () => {
          const done = current
          end()
          if (!done || done.to === done.from) return
          chain.getState().edit(moveStage(stageId, done.to))
          const kind = stages[from]?.kind
          if (kind) announce(`${stageDefinitions[kind].label}, position ${done.to + 1} of ${stages.length}`)
        },
        on,
      )
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
