import { scaleLinear } from 'd3-scale'
import { line } from 'd3-shape'
import { detectorOf, plain, plainInSentence, type StaticCurve } from '../../../core'
import { useDetail, useStageColour } from '../../context/app-context'
import { DragHandle } from './drag-handle'
import { LevelBars } from './level-bars'
import { PictureFrame, type PlotArea } from './picture-frame'
import type { PictureProps } from './picture-props'
import styles from './pictures.module.css'
import { HIGHEST_DBFS, lowestShownDbfs, outputDbfs, staticCurvePoints } from './static-curve'
import { WorkingPoint } from './working-point'

/**
 * Output level against input level once the gain has settled, without makeup, over how often each level occurs; threshold
 * and knee are dragged on it, and a dot shows the level right now.
 */
export function StaticCurvePicture({ picture: { curve }, stage, index }: PictureProps<'static-curve'>) {
  const colour = useStageColour(stage.id)
  const level = useDetail(({ stageId, detail }) => (stageId === stage.id ? detail?.level : null)) ?? null
  const lowest = lowestShownDbfs(curve)
  const detector = detectorOf(stage)
  const draw = ({ left, right, top, bottom, textScale }: PlotArea) => {
    const x = scaleLinear([lowest, HIGHEST_DBFS], [left, right])
    const y = scaleLinear([lowest, HIGHEST_DBFS], [bottom, top])
    const path = line<[number, number]>()
      .x(([inDb]) => x(inDb))
      .y(([, outDb]) => y(outDb))(staticCurvePoints(curve))
    const at = x(curve.thresholdDb)
    const dbPerPx = (HIGHEST_DBFS - lowest) / (right - left)
    const wordsAtLeft = at - left > right - at
    const kneeEnd = Math.min(HIGHEST_DBFS, curve.thresholdDb + curve.kneeDb / 2)
    return (
      <g style={{ '--stage': colour }}>
        {x.ticks(4).map((db) => (
          <g key={db}>
            <path className={styles.grid} d={`M${x(db)},${top}V${bottom}M${left},${y(db)}H${right}`} />
            {Math.abs(x(db) - at) > 18 * textScale && (
              <text className={styles.tick} x={x(db)} y={bottom + 13 * textScale} textAnchor="middle">
                {plain(db, 0)}
              </text>
            )}
            <text className={styles.tick} x={left - 4} y={y(db)} dy="0.35em" textAnchor="end">
              {plain(db, 0)}
            </text>
          </g>
        ))}
        <LevelBars
          level={level}
          fromDbfs={lowest}
          thresholdDb={curve.thresholdDb}
          area={{ left, right, top, bottom, textScale }}
        />
        <path className={styles.bypassed} d={`M${left},${bottom}L${right},${top}`} />
        <path className={styles.threshold} d={`M${at},${top}V${bottom}`} />
        <text
          className={styles.word}
          x={at + (wordsAtLeft ? -4 : 4)}
          y={top + 10 * textScale}
          textAnchor={wordsAtLeft ? 'end' : 'start'}
        >
          threshold {plainInSentence(curve.thresholdDb, 1)}
        </text>
        <text className={styles.tick} x={(left + right) / 2} y={bottom + 28 * textScale} textAnchor="middle">
          level in, dBFS; grey: how often
        </text>
        <path className={styles.processed} d={path ?? ''} />
        {stage.on && <WorkingPoint curve={curve} index={index} x={x} y={y} />}
        {detector && (
          <>
            <DragHandle
              stageId={stage.id}
              setting={detector.knee}
              x={x(kneeEnd)}
              y={y(outputDbfs(kneeEnd, curve))}
              along="x"
              textScale={textScale * 0.75}
              valueAt={(start, dx) => start + 2 * dx * dbPerPx}
            />
            <DragHandle
              stageId={stage.id}
              setting={detector.threshold}
              x={at}
              y={bottom}
              along="x"
              textScale={textScale}
              line={`M${at},${top}V${bottom}`}
              valueAt={(start, dx) => start + dx * dbPerPx}
            />
          </>
        )}
      </g>
    )
  }
  return (
    <PictureFrame label={sentenceOf(curve, level !== null)} busy={level === null}>
      {draw}
    </PictureFrame>
  )
}

function sentenceOf({ thresholdDb }: StaticCurve, hasLevel: boolean): string {
  const bars = hasLevel ? ' Bars show how often each level occurs in front of it.' : ''
  return `Static curve: levels up to the threshold of ${plainInSentence(thresholdDb, 1)} dBFS pass unchanged, levels above it are reduced.${bars}`
}
