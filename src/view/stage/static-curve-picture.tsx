import { scaleLinear } from 'd3-scale'
import { line } from 'd3-shape'
import { plain, type StaticCurve } from '../../core'
import { useListen, useStageColour } from '../app-context'
import { PictureFrame } from './picture-frame'
import frame from './picture-frame.module.css'
import { HIGHEST_DBFS, lowestShownDbfs, staticCurvePoints } from './static-curve'
import styles from './transfer-picture.module.css'
import { WorkingPoint } from './working-point'

const SIDE = 200
const MARGIN = 28
/** Where the words at the top end. */
const BENEATH_WORDS = 21

interface StaticCurvePictureProps {
  readonly curve: StaticCurve
  readonly stageId: string
  readonly index: number
  readonly on: boolean
}

/** Output against input level once everything has settled, without makeup; the point is where it works just now. */
export function StaticCurvePicture({ curve, stageId, index, on }: StaticCurvePictureProps) {
  const colour = useStageColour(stageId)
  const playing = useListen((state) => state.playing)
  const lowest = lowestShownDbfs(curve)
  const x = scaleLinear([lowest, HIGHEST_DBFS], [MARGIN, SIDE - 8])
  const y = scaleLinear([lowest, HIGHEST_DBFS], [SIDE - MARGIN, 8])
  const path = line<[number, number]>()
    .x(([inDb]) => x(inDb))
    .y(([, outDb]) => y(outDb))(staticCurvePoints(curve))
  const threshold = `${plain(curve.thresholdDb, 1)} dBFS`
  return (
    <PictureFrame
      width={SIDE}
      height={SIDE}
      label={`Static curve: levels up to the threshold of ${threshold} leave as they came, what rises above it is held.`}
      caption={playing && on ? 'Point: where it works now.' : 'Output against input.'}
    >
      {x.ticks(-lowest / 20).map((db) => (
        <g key={db}>
          <text className={frame.tick} x={x(db)} y={SIDE - MARGIN + 16} textAnchor="middle">
            {plain(db, 0)}
          </text>
          <text className={frame.tick} x={MARGIN - 6} y={y(db)} dy="0.35em" textAnchor="end">
            {plain(db, 0)}
          </text>
        </g>
      ))}
      <text className={frame.tick} x={MARGIN + 6} y={16}>
        out before makeup, dBFS
      </text>
      <text className={frame.tick} x={SIDE - 8} y={SIDE - MARGIN - 6} textAnchor="end">
        in, dBFS
      </text>
      <path className={frame.axes} d={`M${MARGIN},8V${SIDE - MARGIN}H${SIDE - 8}`} />
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
