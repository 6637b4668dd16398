import type { MouseEvent, RefObject } from 'react'
import { flushSync } from 'react-dom'
import { type StageDoc, stageDefinitions } from '../../../core'
import { moveStage, removeStage } from '../../../session/chain/chain-edits'
import { printedKey } from '../../actions/key-table'
import { useApp, useStageColour } from '../../context/app-context'
import { StageGlyph } from '../../controls/stage-glyph'
import styles from './stage-actions.module.css'

interface StageActionsProps {
  readonly stage: StageDoc
  /** Position in the chain, from 0. */
  readonly index: number
  readonly count: number
  /** The stages of the chain. */
  readonly list: RefObject<HTMLOListElement | null>
  /** The button that adds one. */
  readonly adder: RefObject<HTMLButtonElement | null>
  announce(text: string): void
}

/** Moves and removes the selected stage. */
export function StageActions({ stage, index, count, list, adder, announce }: StageActionsProps) {
  const { chain } = useApp()
  const colour = useStageColour(stage.id)
  const { label } = stageDefinitions[stage.kind]
  const move = (to: number) => (event: MouseEvent<HTMLButtonElement>) => {
    if (to < 0 || to >= count) return
    flushSync(() => chain.getState().edit(moveStage(stage.id, to)))
    // What moves in the document loses the focus.
    event.currentTarget.focus()
    announce(`${label}, position ${to + 1} of ${count}`)
  }
  const remove = () => {
    // The focus goes to the stage that takes its place, so that a second press does not take that one too;
    // after the last one it goes to what begins the chain anew.
    flushSync(() => chain.getState().edit(removeStage(stage.id)))
    announce(`${label} removed`)
    const next = list.current?.querySelectorAll<HTMLElement>('[aria-current]')
    const after = next?.[Math.min(index, next.length - 1)] ?? adder.current
    after?.focus()
  }
  return (
    <span className={styles.actions}>
      <StageGlyph colour={colour} index={index} on={stage.on} />
      <button
        type="button"
        aria-disabled={index === 0}
        onClick={move(index - 1)}
        aria-label={`Move ${label} earlier`}
        title={`Move ${label} earlier: key ${printedKey('stage-earlier')}`}
        data-look="bare"
      >
        ←
      </button>
      <button
        type="button"
        aria-disabled={index === count - 1}
        onClick={move(index + 1)}
        aria-label={`Move ${label} later`}
        title={`Move ${label} later: key ${printedKey('stage-later')}`}
        data-look="bare"
      >
        →
      </button>
      <button
        type="button"
        onClick={remove}
        aria-label={`Remove ${label}`}
        title={`Remove ${label}`}
        data-look="bare"
      >
        ✕
      </button>
    </span>
  )
}
