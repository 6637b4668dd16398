import { scaleLinear } from 'd3-scale'
import { line } from 'd3-shape'
import { plain, plainInSentence } from '../../../core'
import { useListen, useStageColour } from '../../context/app-context'
import { HIGHEST_DBFS, lowestShownDbfs, staticCurvePoints } from '../../plot/static-curve'
import { PictureFrame } from './picture-frame'
import type { PictureProps } from './picture-props'
import styles from './pictures.module.css'
import { WorkingPoint } from './working-point'

const SIDE = 200
const MARGIN = 28
/** Where the words at the top end. */
const BENEATH_WORDS = 21

/** Output level against input level once the gain has settled, without makeup; the dot shows the level right now. */
export function StaticCurvePicture({ picture: { curve }, stageId, index, on }: PictureProps<'static-curve'>) {
  const colour = useStageColour(stageId)
  const playing = useListen((state) => state.playing)
  const lowest = lowestShownDbfs(curve)
  const x = scaleLinear([lowest, HIGHEST_DBFS], [MARGIN, SIDE - 8])
  const y = scaleLinear([lowest, HIGHEST_DBFS], [SIDE - MARGIN, 8])
  const path = line<[number, number]>()
    .x(([inDb]) => x(inDb))
    .y(([, outDb]) => y(outDb))(staticCurvePoints(curve))
  const threshold = `${plainInSentence(curve.thresholdDb, 1)} dBFS`
  return (
    <PictureFrame
      width={SIDE}
      height={SIDE}
      label={`Static curve: levels up to the threshold of ${threshold} pass unchanged, levels above it are reduced.`}
      caption={playing && on ? 'Dot: the level right now.' : 'Output against input level.'}
    >
      {x.ticks(-lowest / 20).map((db) => (
        <g key={db}>
          <text className={styles.tick} x={x(db)} y={SIDE - MARGIN + 16} textAnchor="middle">
            {plain(db, 0)}
          </text>
          <text className={styles.tick} x={MARGIN - 6} y={y(db)} dy="0.35em" textAnchor="end">
            {plain(db, 0)}
          </text>
        </g>
      ))}
      <text className={styles.tick} x={MARGIN + 6} y={16}>
        out before makeup, dBFS
      </text>
      <text className={styles.tick} x={SIDE - 8} y={SIDE - MARGIN - 6} textAnchor="end">
        in, dBFS
      </text>
      <path className={styles.axes} d={`M${MARGIN},8V${SIDE - MARGIN}H${SIDE - 8}`} />
      <path className={styles.threshold} d={`M${x(curve.thresholdDb)},${BENEATH_WORDS}V${SIDE - MARGIN}`} />
      <path
        className={styles.bypassed}
        d={`M${x(lowest)},${y(lowest)}L${x(HIGHEST_DBFS)},${y(HIGHEST_DBFS)}`}
      />
      <path className={styles.processed} d={path ?? ''} style={{ '--stage': colour }} />
      {on && <WorkingPoint curve={curve} index={index} x={x} y={y} />}
    </PictureFrame>
  )
}
