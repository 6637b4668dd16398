import { reductionDb, type StageDoc, type StagePicture } from '../../../core'
import { useGainReduction } from '../../context/use-gain-reduction'
import { levelOfReduction } from '../../plot/static-curve'
import { HEIGHT, levelPoint, staticCurvePath, WIDTH } from './card-paths'
import styles from './figures.module.css'

interface StaticCurveCardProps {
  readonly picture: Extract<StagePicture, { kind: 'static-curve' }>
  readonly stage: StageDoc
  /** Position of the stage in the chain, from 0. */
  readonly index: number
}

/** The static curve, with a dot at the level right now. */
export function StaticCurveCard({ picture: { curve }, stage, index }: StaticCurveCardProps) {
  const level = levelOfReduction(curve, useGainReduction(index) ?? 0)
  const point =
    stage.on && level !== null ? levelPoint(curve, level, level - reductionDb(level, curve)) : null
  return (
    <>
      <path className={styles.ghost} d={`M0,${HEIGHT - 2}L${WIDTH},2`} />
      <path className={styles.line} d={staticCurvePath(curve)} />
      {point && <path className={styles.dot} d={`M${point.join()}h0`} />}
    </>
  )
}
