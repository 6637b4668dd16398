import { scaleLinear } from 'd3-scale'
import { line } from 'd3-shape'
import { plain } from '../../../core'
import { useStageColour } from '../../context/app-context'
import { PictureFrame } from './picture-frame'
import type { PictureProps } from './picture-props'
import styles from './pictures.module.css'

const SIDE = 200
const x = scaleLinear([-1, 1], [8, SIDE - 8])
const y = scaleLinear([-1, 1], [SIDE - 8, 8])
/** Half and all of full scale. */
const TICKS = [-1, -0.5, 0.5, 1]
const INPUTS = Array.from({ length: 101 }, (_, i) => (i - 50) / 50)

/** Output sample against input sample, before mix and output level. */
export function TransferCurvePicture({
  picture: { outputAt, sentence },
  stageId,
}: PictureProps<'transfer-curve'>) {
  const colour = useStageColour(stageId)
  const path = line<number>()
    .x((input) => x(input))
    .y((input) => y(outputAt(input)))(INPUTS)
  return (
    <PictureFrame
      width={SIDE}
      height={SIDE}
      label={sentence}
      caption="1 is full scale; before mix and output gain."
    >
      <clipPath id="transfer-curve-clip">
        <rect x={8} y={8} width={SIDE - 16} height={SIDE - 16} />
      </clipPath>
      <path className={styles.axes} d={`M${x(0)},8V${SIDE - 8}M8,${y(0)}H${SIDE - 8}`} />
      {TICKS.map((share) => (
        <path
          key={share}
          className={styles.axes}
          d={`M${x(share)},${y(0) - 3}v6M${x(0) - 3},${y(share)}h6`}
        />
      ))}
      <g className={styles.tick}>
        <text x={x(1)} y={y(0) + 16} textAnchor="end">
          +1 in
        </text>
        <text x={x(-1)} y={y(0) - 8}>
          {plain(-1, 0)}
        </text>
        <text x={x(0) - 8} y={y(1) + 10} textAnchor="end">
          out +1
        </text>
        <text x={x(0) + 8} y={y(-1)}>
          {plain(-1, 0)}
        </text>
      </g>
      <path className={styles.bypassed} d={`M${x(-1)},${y(-1)}L${x(1)},${y(1)}`} />
      <path
        className={styles.processed}
        clipPath="url(#transfer-curve-clip)"
        d={path ?? ''}
        style={{ '--stage': colour }}
      />
    </PictureFrame>
  )
}
