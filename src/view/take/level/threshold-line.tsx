import { numberedStage, plainInSentence, type SetByLevel, type StageDoc } from '../../../core'
import { setSetting } from '../../../session/chain/chain-edits'
import { useApp } from '../../context/app-context'
import { keyedValue } from '../../controls/key-steps'
import { spoken } from '../../controls/spoken'
import { useValueDrag } from '../../controls/use-value-drag'
import type { LevelRange } from './level-geometry'
import styles from './threshold-line.module.css'

interface ThresholdLineProps {
  readonly stage: StageDoc
  /** Position of the stage in the chain, from 0. */
  readonly index: number
  readonly threshold: SetByLevel
  readonly range: LevelRange
  readonly height: number
}

/** The threshold of a stage across its level, to be dragged, or moved by the keys of a slider. */
export function ThresholdLine({ stage, index, threshold, range, height }: ThresholdLineProps) {
  const { chain } = useApp()
  const { key, parameter, value } = threshold
  const change = (next: number) =>
    chain.getState().edit(setSetting(stage.id, key, next), `${stage.id} ${key}`)
  const rest = () => chain.getState().endGesture()
  const dbPerPx = (range.highDbfs - range.lowDbfs) / Math.max(1, height)
  const begin = useValueDrag({
    parameter,
    value,
    valueAt: (start, _, dy) => start - dy * dbPerPx,
    onChange: change,
    onRest: rest,
  })
  return (
    <div
      role="slider"
      tabIndex={0}
      className={styles.line}
      title={`${parameter.label}: drag`}
      aria-label={`${parameter.label} of ${numberedStage(index, stage.kind)}, on its level`}
      aria-orientation="vertical"
      aria-valuemin={parameter.min}
      aria-valuemax={parameter.max}
      aria-valuenow={value}
      aria-valuetext={spoken(parameter, value)}
      onPointerDown={begin}
      onKeyDown={(event) => {
        if (event.ctrlKey || event.metaKey) return
        const next = keyedValue(parameter, value, event)
        if (next === null) return
        event.preventDefault()
        event.stopPropagation()
        change(next)
      }}
      onKeyUp={rest}
      onBlur={rest}
    >
      <span className={styles.word}>{plainInSentence(value, 1)}</span>
    </div>
  )
}
