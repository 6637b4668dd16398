import { memo, useId } from 'react'
import { describeStage, numberedStage, type StageDoc, stageDefinitions } from '../../core'
import { switchStage } from '../../session/chain/chain-edits'
import { useApp, useChain, useStageColour, useTake } from '../context/app-context'
import { StageGlyph } from '../controls/stage-glyph'
import { Switch } from '../controls/switch'
import { LazyView } from '../lazy/lazy-view'
import type { CardPlace } from './chain-layout'
import styles from './chain-stage.module.css'
import { HearUpToHere } from './hear-up-to-here'
import { cardFigures } from './lazy-parts'
import { NoFigures } from './no-figures'
import type { Drop, Reorder } from './use-reorder'

interface ChainStageProps extends CardPlace {
  readonly stage: StageDoc
  /** Position in the chain, from 0. */
  readonly index: number
  readonly isLast: boolean
  /** Its number, kind and switch alone. */
  readonly compact: boolean
  /** Whether it stands before the listening point. */
  readonly heard: boolean
  /** Whether the figures that are known are those of the chain that is shown. */
  readonly measured: boolean
  readonly drop: Drop | undefined
  readonly onGrab: Reorder['begin']
}

/** One stage of the chain as a card, and the piece of the line behind it. */
export const ChainStage = memo(
  ({
    stage,
    index,
    isLast,
    column,
    line,
    continues,
    breaks,
    compact,
    heard,
    measured,
    drop,
    onGrab,
  }: ChainStageProps) => {
    const { chain } = useApp()
    const selected = useChain((state) => state.selectedId === stage.id)
    const hasTake = useTake(({ take }) => take !== null)
    const colour = useStageColour(stage.id)
    const sentenceId = useId()
    const name = numberedStage(index, stage.kind)
    const { label } = stageDefinitions[stage.kind]
    const sentence = describeStage(stage)
    const choose = () => {
      chain.getState().select(stage.id)
      // Pressed again, it leads on to its settings, which a narrow screen does not show at once.
      if (selected) document.getElementById('selected-stage')?.scrollIntoView({ block: 'nearest' })
    }
    return (
      <li
        className={styles.stage}
        data-stage-id={stage.id}
        data-selected={selected}
        data-on={stage.on}
        data-unheard={!heard}
        data-drop={drop}
        data-continues={continues}
        data-breaks={breaks}
        style={{ '--stage': colour, gridColumn: column + 2, gridRow: line + 1 }}
      >
        <div className={compact ? styles.compact : styles.card}>
          <button
            type="button"
            className={styles.choose}
            aria-current={selected}
            aria-describedby={sentenceId}
            title={sentence}
            onClick={choose}
            onPointerDown={(event) => onGrab(event, stage.id)}
          >
            <span className={styles.glyph}>
              <StageGlyph colour={colour} index={index} on={stage.on} />
            </span>
            <span className={styles.label}>{label}</span>
          </button>
          <span className={styles.switch}>
            <Switch
              on={stage.on}
              label={name}
              onChange={(on) => {
                chain.getState().select(stage.id)
                chain.getState().edit(switchStage(stage.id, on))
              }}
            />
          </span>
          <span id={sentenceId} className={styles.sentence}>
            {sentence}
          </span>
          {hasTake && (
            <LazyView
              part={cardFigures}
              props={{ stage, index, compact, measured: measured && heard && stage.on }}
              failed={NoFigures}
            />
          )}
        </div>
        <HearUpToHere stageId={stage.id} place={isLast ? 'at the end of the chain' : `after ${name}`} />
      </li>
    )
  },
)
