import { useMemo } from 'react'
import { plain } from '../../core'
import { useEvidence } from '../bench-context'
import { MARGIN, type Plot } from './plot'
import styles from './spectra.module.css'
import { spectrumPath } from './spectrum-path'
import { spectrumScale, spectrumTicks } from './spectrum-scale'

/** The take's average spectrum on both sides, on a scale of its own at the right. */
export function Spectra({ plot, clipPath }: { plot: Plot; clipPath: string }) {
  const evidence = useEvidence((state) => state.evidence)
  const drawn = useMemo(() => {
    if (!evidence) return null
    const spectra = [evidence.without.spectrum, evidence.with.spectrum] as const
    const y = spectrumScale(spectra, [plot.height - MARGIN.bottom, MARGIN.top])
    const [without, withSide] = spectra.map((spectrum) => spectrumPath(spectrum, plot.x, y))
    return { without, with: withSide, ticks: spectrumTicks(y).map((db) => ({ db, top: y(db) })) }
  }, [evidence, plot])
  if (!drawn) return null
  const right = plot.width - MARGIN.right + 6
  return (
    <>
      <g clipPath={clipPath}>
        <path className={styles.without} d={drawn.without} />
        <path className={styles.with} d={drawn.with} />
      </g>
      <g className={styles.tick}>
        {drawn.ticks.map(({ db, top }) => (
          <text key={db} x={right} y={top} dy="0.35em">
            {plain(db, 0)}
          </text>
        ))}
        <text x={right} y={MARGIN.top} dy="0.35em">
          dBFS
        </text>
      </g>
    </>
  )
}
