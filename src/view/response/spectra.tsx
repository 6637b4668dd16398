import { memo, useMemo } from 'react'
import { plain } from '../../core'
import { useListen } from '../context/app-context'
import { spectrumArea, spectrumPath } from '../plot/spectrum-path'
import type { Plot } from './plot'
import styles from './spectra.module.css'
import { spectrumScale, spectrumTicks } from './spectrum-scale'
import { useSpectra } from './use-spectra'

/**
 * The average spectra on a scale of their own at the right: that of the side that is heard as an area, that of the
 * other as a thin line.
 */
export const Spectra = memo(({ plot, clipPath }: { plot: Plot; clipPath: string }) => {
  const side = useListen((state) => state.side)
  const spectra = useSpectra()
  const { bypassed, processed } = spectra ?? {}
  const drawn = useMemo(() => {
    if (!bypassed || !processed) return null
    const y = spectrumScale([bypassed, processed], [plot.height - plot.margin.bottom, plot.margin.top])
    const [heard, other] = side === 'processed' ? [processed, bypassed] : [bypassed, processed]
    return {
      area: spectrumArea(heard, plot.x, y),
      edge: spectrumPath(heard, plot.x, y),
      other: spectrumPath(other, plot.x, y),
      ticks: spectrumTicks(y).map((db) => ({ db, top: y(db) })),
    }
  }, [bypassed, processed, side, plot])
  if (!drawn) return null
  const right = plot.width - plot.margin.right + 6
  return (
    <>
      <g clipPath={clipPath}>
        <path className={styles.area} d={drawn.area} />
        <path className={styles.edge} d={drawn.edge} />
        <path className={styles.other} d={drawn.other} />
      </g>
      <g className={styles.tick}>
        {drawn.ticks.map(({ db, top }) => (
          <text key={db} x={right} y={top} dy="0.35em">
            {plain(db, 0)}
          </text>
        ))}
        <text x={right} y={plot.margin.top} dy="0.35em">
          dBFS
        </text>
      </g>
    </>
  )
})
