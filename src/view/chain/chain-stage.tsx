import { memo } from 'react'
import { describeStage, numberedStage, type StageDoc, stageDefinitions } from '../../core'
import { switchStage } from '../../session/chain/chain-edits'
import { useApp, useChain, useStageColour } from '../context/app-context'
import { StageGlyph } from '../controls/stage-glyph'
import { Switch } from '../controls/switch'
import styles from './chain-stage.module.css'
import { ListeningPoint } from './listening-point'
import { StageChange } from './stage-change'
import { StageNow } from './stage-now'
import type { Drop, Reorder } from './use-reorder'

interface ChainStageProps {
  readonly stage: StageDoc
  /** Position in the chain, from 0. */
  readonly index: number
  readonly count: number
  /** Position of the last stage that is heard, from 0. */
  readonly listeningPointIndex: number
  readonly drop: Drop | undefined
  readonly onGrab: Reorder['begin']
}

/** One stage of the chain: whether it is on, what it does, and what it changes. */
export const ChainStage = memo(
  ({ stage, index, count, listeningPointIndex, drop, onGrab }: ChainStageProps) => {
    const { chain, listening } = useApp()
    const selected = useChain((state) => state.selectedId === stage.id)
    const colour = useStageColour(stage.id)
    const name = numberedStage(index, stage.kind)
    return (
      <li
        className={styles.stage}
        data-stage-id={stage.id}
        data-selected={selected}
        data-on={stage.on}
        data-unheard={index > listeningPointIndex}
        data-drop={drop}
        style={{ '--stage': colour }}
      >
        <button
          type="button"
          className={styles.choose}
          aria-current={selected}
          onClick={() => chain.getState().select(stage.id)}
          onPointerDown={(event) => onGrab(event, stage.id)}
        >
          <span className={styles.head}>
            <StageGlyph colour={colour} index={index} on={stage.on} />
            <span className={styles.label}>{stageDefinitions[stage.kind].label}</span>
          </span>
          <span className={styles.sentence}>{describeStage(stage)}</span>
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
        <div className={styles.foot}>
          <StageChange stage={stage} heard={index <= listeningPointIndex} />
          {stageDefinitions[stage.kind].reducesGain && (
            <StageNow stageId={stage.id} index={index} name={name} />
          )}
          {index < count - 1 && (
            <ListeningPoint
              here={index === listeningPointIndex}
              place={`after ${name}`}
              onPut={() => listening.setListeningPoint(stage.id)}
            />
          )}
        </div>
      </li>
    )
  },
)
