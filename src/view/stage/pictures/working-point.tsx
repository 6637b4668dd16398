import { reductionDb, type StaticCurve } from '../../../core'
import { useGainReduction } from '../../context/use-gain-reduction'
import { levelOfReduction } from '../../plot/static-curve'
import styles from './pictures.module.css'

interface WorkingPointProps {
  readonly curve: StaticCurve
  readonly index: number
  x(inDb: number): number
  y(outDb: number): number
}

/** Where a stage is on its static curve right now, from the gain that the audio thread reports. */
export function WorkingPoint({ curve, index, x, y }: WorkingPointProps) {
  const level = levelOfReduction(curve, useGainReduction(index) ?? 0)
  if (level === null) return null
  return <circle className={styles.point} cx={x(level)} cy={y(level - reductionDb(level, curve))} r={5} />
}
