import { scaleLinear } from 'd3-scale'
import { type AddedHarmonics, plain, plainInSentence } from '../../../core'
import styles from './harmonic-bars.module.css'
import type { PlotArea } from './picture-frame'
import pictures from './pictures.module.css'

/** The lowest level drawn, dB: what is lower is not heard beside the sine. */
const LOWEST_DB = -90
/** Above all harmonics of any curve: the third of a square wave lies 9.5 dB below the first. */
const HIGHEST_DB = -9

/** "On a sine as loud as the take: harmonic 3 at −34 dB, ..." */
export function harmonicWords({ levelsDb }: AddedHarmonics): string {
  const heard = levelsDb.flatMap((db, k) =>
    db > LOWEST_DB ? `${k + 2} at ${plainInSentence(db, 0)} dB` : [],
  )
  return heard.length === 0
    ? 'To a sine as loud as the take it adds no harmonics.'
    : `To a sine as loud as the take it adds harmonics: ${heard.join(', ')}.`
}

/** Harmonics that are added to a sine as loud as the take, as bars with their levels relative to the sine. */
export function HarmonicBars({ harmonics, area }: { harmonics: AddedHarmonics; area: PlotArea }) {
  const { left, right, top, bottom, textScale } = area
  const y = scaleLinear([LOWEST_DB, HIGHEST_DB], [bottom, top + 12 * textScale]).clamp(true)
  const step = (right - left) / harmonics.levelsDb.length
  return (
    <>
      <path className={pictures.grid} d={`M${left},${bottom}H${right}`} />
      {harmonics.levelsDb.map((db, k) => {
        const middle = left + (k + 0.5) * step
        const number = k + 2
        return (
          <g key={number}>
            {db > LOWEST_DB && (
              <>
                <path
                  className={styles.bar}
                  d={`M${middle},${bottom}V${y(db)}`}
                  style={{ strokeWidth: step / 2 }}
                />
                <text className={pictures.tick} x={middle} y={y(db) - 3} textAnchor="middle">
                  {plain(db, 0)}
                </text>
              </>
            )}
            <text className={pictures.tick} x={middle} y={bottom + 13 * textScale} textAnchor="middle">
              {number}
            </text>
          </g>
        )
      })}
      <text className={pictures.tick} x={(left + right) / 2} y={bottom + 28 * textScale} textAnchor="middle">
        harmonics added, dB
      </text>
    </>
  )
}
