import { memo, useMemo } from 'react'
import { spectrumArea, spectrumPath } from '../plot/spectrum-path'
import styles from './difference-spectrum.module.css'
import type { Plot } from './plot'
import { differenceSpectrum } from './spectrum-level'
import { useSpectra } from './use-spectra'

/** What the average spectrum gains from one side to the other, on the scale of the response: where both agree, it is all the equalisers' doing. */
export const DifferenceSpectrum = memo(({ plot, clipPath }: { plot: Plot; clipPath: string }) => {
  const spectra = useSpectra()
  const { bypassed, processed } = spectra ?? {}
  const drawn = useMemo(() => {
    if (!bypassed || !processed) return null
    const difference = differenceSpectrum(bypassed, processed)
    return {
      area: spectrumArea(difference, plot.x, plot.y, 0),
      edge: spectrumPath(difference, plot.x, plot.y),
    }
  }, [bypassed, processed, plot])
  if (!drawn) return null
  return (
    <g clipPath={clipPath}>
      <path className={styles.area} d={drawn.area} />
      <path className={styles.edge} d={drawn.edge} />
    </g>
  )
})
