import { scaleLog } from 'd3-scale'
import { frequency, type SetByLevel } from '../../../core'
import styles from './crossover-line.module.css'
import { DragHandle } from './drag-handle'
import pictures from './pictures.module.css'

interface CrossoverLineProps {
  readonly stageId: string
  readonly crossover: SetByLevel
  readonly left: number
  readonly right: number
  readonly y: number
  readonly textScale: number
}

/** The frequencies that a crossover can be set to, as a line: thick from it up, where the level is detected. */
export function CrossoverLine({ stageId, crossover, left, right, y, textScale }: CrossoverLineProps) {
  const { parameter, value } = crossover
  const x = scaleLog([parameter.min, parameter.max], [left, right]).clamp(true)
  const at = x(value)
  return (
    <>
      <path className={styles.all} d={`M${left},${y}H${right}`} />
      <path className={pictures.processed} d={`M${at},${y}H${right}`} />
      <text className={pictures.tick} x={(left + right) / 2} y={y + 18 * textScale} textAnchor="middle">
        sibilants above {frequency(value)}, dBFS
      </text>
      <DragHandle
        stageId={stageId}
        setting={crossover}
        x={at}
        y={y}
        along="x"
        textScale={textScale * 0.75}
        valueAt={(start, dx) => x.invert(x(start) + dx)}
      />
    </>
  )
}
