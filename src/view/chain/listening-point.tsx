import { type KeyboardEvent, type PointerEvent, type RefObject, useRef } from 'react'
import { numberedStage, type StageDoc } from '../../core'
import { useApp } from '../context/app-context'
import { followPointer } from '../hooks/follow-pointer'
import type { CardPlace } from './chain-layout'
import styles from './listening-point.module.css'
import { nearestPlace } from './nearest-place'

export interface ListeningPointProps extends Pick<CardPlace, 'column' | 'line'> {
  readonly stages: readonly StageDoc[]
  /** Position of the last stage that is heard, from 0. */
  readonly index: number
  /** The cards. */
  readonly list: RefObject<HTMLOListElement | null>
}

/** Presses move it by so many stages. */
const STEPS: ReadonlyMap<string, number> = new Map([
  ['ArrowLeft', -1],
  ['ArrowDown', -1],
  ['ArrowRight', 1],
  ['ArrowUp', 1],
  ['Home', Number.NEGATIVE_INFINITY],
  ['End', Number.POSITIVE_INFINITY],
])

/** The mark on the line up to which one listens: dragged along it, put by a press on the line, moved by keys. */
export function ListeningPoint({ stages, index, column, line, list }: ListeningPointProps) {
  const { listening } = useApp()
  const dragging = useRef(false)
  const last = stages.length - 1
  const put = (to: number) =>
    listening.setListeningPoint(to >= last ? null : (stages[Math.max(0, to)]?.id ?? null))
  const press = (event: KeyboardEvent) => {
    const step = STEPS.get(event.key)
    if (step === undefined || event.ctrlKey || event.metaKey || event.altKey) return
    event.preventDefault()
    put(index + step)
  }
  const grab = (down: PointerEvent) => {
    if (down.button !== 0 || dragging.current) return
    dragging.current = true
    const end = () => {
      dragging.current = false
    }
    followPointer(down, {
      onMove: ({ clientX, clientY }) => {
        const gaps = [...(list.current?.querySelectorAll('[data-stage-id] > button') ?? [])]
        put(
          nearestPlace(
            gaps.map((gap) => gap.getBoundingClientRect()),
            clientX,
            clientY,
          ),
        )
      },
      onUp: end,
      onCancel: end,
    })
  }
  const stage = stages[index]
  return (
    <li className={styles.place} style={{ gridColumn: column + 2, gridRow: line + 1 }}>
      <div
        role="slider"
        tabIndex={0}
        className={styles.point}
        title="Listening point: hear up to here. Drag it along the line."
        aria-label="Listening point"
        aria-valuemin={1}
        aria-valuemax={stages.length}
        aria-valuenow={index + 1}
        aria-valuetext={
          index === last || !stage ? 'at the end of the chain' : `after ${numberedStage(index, stage.kind)}`
        }
        onKeyDown={press}
        onPointerDown={grab}
      >
        <svg viewBox="0 0 16 16" aria-hidden="true">
          <path d="M4.5 6.5a3.5 3.5 0 0 1 7 0c0 2.5-2.5 3-2.5 5a2 2 0 0 1-3.6 1.2M6.6 6.6a1.4 1.4 0 0 1 2.8 0c0 1-.9 1.2-1.1 2" />
        </svg>
      </div>
    </li>
  )
}
