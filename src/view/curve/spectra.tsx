import { memo, useMemo } from 'react'
import { plain } from '../../core'
import { useEvidence } from '../context/app-context'
import { spectrumPath } from '../plot/spectrum-path'
import type { Plot } from './plot'
import styles from './spectra.module.css'
import { spectrumScale, spectrumTicks } from './spectrum-scale'

/** The take's average spectrum on both sides, on a scale of its own at the right. */
export const Spectra = memo(({ plot, clipPath }: { plot: Plot; clipPath: string }) => {
  const before = useEvidence((state) => state.evidence?.bypassed.spectrum)
  const behind = useEvidence((state) => state.evidence?.processed.spectrum)
  const drawn = useMemo(() => {
    if (!before || !behind) return null
    const spectra = [before, behind] as const
    const y = spectrumScale(spectra, [plot.height - plot.margin.bottom, plot.margin.top])
    const [bypassed, processed] = spectra.map((spectrum) => spectrumPath(spectrum, plot.x, y))
    return { bypassed, processed: processed, ticks: spectrumTicks(y).map((db) => ({ db, top: y(db) })) }
  }, [before, behind, plot])
  if (!drawn) return null
  const right = plot.width - plot.margin.right + 6
  return (
    <>
      <g clipPath={clipPath}>
        <path className={styles.bypassed} d={drawn.bypassed} />
        <path className={styles.processed} d={drawn.processed} />
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
