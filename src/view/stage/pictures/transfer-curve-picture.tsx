import { scaleLinear } from 'd3-scale'
import { line } from 'd3-shape'
import { useId } from 'react'
import { plain } from '../../../core'
import { useDetail, useStageColour } from '../../context/app-context'
import { HarmonicBars, harmonicWords } from './harmonic-bars'
import { PictureFrame, type PlotArea } from './picture-frame'
import type { PictureProps } from './picture-props'
import styles from './pictures.module.css'

const INPUTS = Array.from({ length: 101 }, (_, i) => (i - 50) / 50)
/** Half and all of full scale. */
const TICKS = [-1, 0, 1]
/** Share of the longer side that the curve takes; the harmonics have the rest. */
const CURVE_SHARE = 0.52

/** Output sample against input sample, before mix and output level; and the harmonics that the stage adds to a sine. */
export function TransferCurvePicture({
  picture: { outputAt, sentence },
  stage,
}: PictureProps<'transfer-curve'>) {
  const colour = useStageColour(stage.id)
  const clip = useId()
  const harmonics =
    useDetail(({ stageId, detail }) => (stageId === stage.id ? detail?.harmonics : null)) ?? null
  const draw = (area: PlotArea) => {
    const { left, right, top, bottom, textScale } = area
    const isWide = right - left > 1.3 * (bottom - top)
    const curveRight = isWide ? left + CURVE_SHARE * (right - left) - 16 * textScale : right
    const curveBottom = isWide ? bottom : top + CURVE_SHARE * (bottom - top)
    const x = scaleLinear([-1, 1], [left, curveRight])
    const y = scaleLinear([-1, 1], [curveBottom, top])
    const path = line<number>()
      .x((input) => x(input))
      .y((input) => y(outputAt(input)))(INPUTS)
    return (
      <g style={{ '--stage': colour }}>
        <clipPath id={clip}>
          <rect x={left} y={top} width={curveRight - left} height={curveBottom - top} />
        </clipPath>
        {TICKS.map((share) => (
          <g key={share}>
            <path
              className={styles.grid}
              d={`M${x(share)},${top}V${curveBottom}M${left},${y(share)}H${curveRight}`}
            />
            <text className={styles.tick} x={left - 4} y={y(share)} dy="0.35em" textAnchor="end">
              {plain(share, 0)}
            </text>
          </g>
        ))}
        <text className={styles.tick} x={curveRight - 4} y={curveBottom - 5} textAnchor="end">
          in
        </text>
        <text className={styles.tick} x={left + 4} y={top + 11 * textScale}>
          out
        </text>
        <path className={styles.bypassed} d={`M${left},${curveBottom}L${curveRight},${top}`} />
        <path className={styles.processed} clipPath={`url(#${clip})`} d={path ?? ''} />
        {harmonics && (
          <HarmonicBars
            harmonics={harmonics}
            area={{
              ...area,
              left: isWide ? curveRight + 24 * textScale : left,
              top: isWide ? top : curveBottom + 16 * textScale,
            }}
          />
        )}
      </g>
    )
  }
  const label = harmonics ? `${sentence} ${harmonicWords(harmonics)}` : sentence
  return (
    <PictureFrame label={label} busy={harmonics === null}>
      {draw}
    </PictureFrame>
  )
}
