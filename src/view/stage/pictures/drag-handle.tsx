import type { SetByLevel } from '../../../core'
import { setSetting } from '../../../session/chain/chain-edits'
import { useApp } from '../../context/app-context'
import { useValueDrag } from '../../controls/use-value-drag'
import styles from './pictures.module.css'

/** Size of what is seen, and of what takes the pointer, CSS pixels at the usual text size. */
const RADIUS = 6
const GRIP = 14

interface DragHandleProps {
  readonly stageId: string
  readonly setting: SetByLevel
  readonly x: number
  readonly y: number
  readonly along: 'x' | 'y'
  readonly textScale: number
  /** What else takes the pointer: a line that the handle belongs to. */
  readonly line?: string
  /** The value so many pixels right of and below the place of another. */
  valueAt(start: number, dx: number, dy: number): number
}

/** A ring to drag in a picture; by keys and for screen readers its setting is the slider beside the picture. */
export function DragHandle({ stageId, setting, x, y, along, textScale, line, valueAt }: DragHandleProps) {
  const { chain } = useApp()
  const { key, parameter, value } = setting
  const begin = useValueDrag({
    parameter,
    value,
    valueAt,
    onChange: (next) => chain.getState().edit(setSetting(stageId, key, next), `${stageId} ${key}`),
    onRest: () => chain.getState().endGesture(),
  })
  return (
    <g className={along === 'x' ? styles.sideways : styles.upright} onPointerDown={begin}>
      <title>{`${parameter.label}: drag`}</title>
      {line && <path className={styles.lineGrip} d={line} />}
      <circle className={styles.handle} cx={x} cy={y} r={RADIUS * textScale} />
      <circle className={styles.grip} cx={x} cy={y} r={GRIP * textScale} />
    </g>
  )
}
