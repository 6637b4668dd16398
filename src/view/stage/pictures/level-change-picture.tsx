import { scaleLinear } from 'd3-scale'
import { type Measures, plain, signed } from '../../../core'
import { useDetail, useStageColour } from '../../context/app-context'
import styles from './level-change-picture.module.css'
import { PictureFrame, type PlotArea } from './picture-frame'
import type { PictureProps } from './picture-props'
import pictures from './pictures.module.css'

const SHOWN = [
  { label: 'Integrated', unit: 'LUFS', of: ({ integratedLufs }: Measures) => integratedLufs },
  { label: 'True peak', unit: 'dBTP', of: ({ truePeakDbtp }: Measures) => truePeakDbtp },
] as const
/** The levels drawn, dB. */
const LOWEST = -60
const HIGHEST = 6

/** Loudness and true peak in front of the stage (hollow) and behind it (solid). */
export function LevelChangePicture({ stage }: PictureProps<'level-change'>) {
  const colour = useStageColour(stage.id)
  const levels = useDetail(({ stageId, detail }) => (stageId === stage.id ? detail?.levels : null)) ?? null
  const rows = SHOWN.map(({ label, unit, of }) => ({
    label,
    unit,
    before: levels && of(levels.before),
    after: levels && of(levels.after),
  }))
  const draw = ({ right, top, bottom, textScale }: PlotArea) => {
    const x = scaleLinear([LOWEST, HIGHEST], [6 * textScale, right]).clamp(true)
    const rowHeight = (bottom - top) / rows.length
    return (
      <g style={{ '--stage': colour }}>
        {x.ticks(5).map((db) => (
          <g key={db}>
            <path className={pictures.grid} d={`M${x(db)},${top}V${bottom}`} />
            <text className={pictures.tick} x={x(db)} y={bottom + 13 * textScale} textAnchor="middle">
              {plain(db, 0)}
            </text>
          </g>
        ))}
        {rows.map(({ label, unit, before, after }, k) => {
          const y = top + (k + 0.6) * rowHeight
          return (
            <g key={label}>
              <text className={pictures.word} x={x(LOWEST)} y={y - 14 * textScale}>
                {label}, {unit}
              </text>
              {before !== null && after !== null && (
                <>
                  <path className={styles.way} d={`M${x(before)},${y}H${x(after)}`} />
                  <circle className={styles.before} cx={x(before)} cy={y} r={5 * textScale} />
                  <circle className={styles.after} cx={x(after)} cy={y} r={5 * textScale} />
                  <text className={pictures.word} x={x(LOWEST)} y={y + 20 * textScale}>
                    {plain(before, 1)} to {plain(after, 1)}
                  </text>
                </>
              )}
            </g>
          )
        })}
        <text className={pictures.tick} x={right / 2} y={bottom + 28 * textScale} textAnchor="middle">
          hollow before, solid after
        </text>
      </g>
    )
  }
  const words = rows.map(({ label, unit, before, after }) =>
    before === null || after === null
      ? `${label}: not known.`
      : `${label}: ${plain(before, 1)} ${unit} before, ${plain(after, 1)} after, ${signed(after - before, 1)}.`,
  )
  return (
    <PictureFrame label={words.join(' ')} busy={levels === null}>
      {draw}
    </PictureFrame>
  )
}
