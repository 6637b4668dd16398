import { memo, useMemo } from 'react'
import {
  type BandSettings,
  bandDesignOf,
  bandsOf,
  type ChainDoc,
  type EqualiserDesign,
  magnitudeDb,
} from '../../core'
import { useStageColour } from '../context/app-context'
import styles from './band-curves.module.css'
import type { Plot } from './plot'
import { responsePath } from './response-path'

interface BandCurvesProps {
  readonly chain: ChainDoc
  readonly plot: Plot
  readonly sampleRate: number
}

/** The response of each band on its own, in its stage's colour; nothing for what is switched off. */
export function BandCurves({ chain, plot, sampleRate }: BandCurvesProps) {
  return chain.stages.map((stage) =>
    stage.on
      ? bandsOf(stage)?.map((band, bandIndex) => (
          <BandCurve
            // biome-ignore lint/suspicious/noArrayIndexKey: bands have no names of their own, the letter is the place
            key={`${stage.id} ${bandIndex}`}
            band={band}
            design={bandDesignOf(stage)}
            stageId={stage.id}
            plot={plot}
            sampleRate={sampleRate}
          />
        ))
      : null,
  )
}

interface BandCurveProps {
  readonly band: BandSettings
  readonly design: EqualiserDesign
  readonly stageId: string
  readonly plot: Plot
  readonly sampleRate: number
}

const BandCurve = memo(({ band, design, stageId, plot, sampleRate }: BandCurveProps) => {
  const colour = useStageColour(stageId)
  const path = useMemo(
    () => responsePath(plot, magnitudeDb(band, plot.frequenciesHz, sampleRate, design)),
    [band, design, plot, sampleRate],
  )
  return band.on ? <path className={styles.band} d={path} style={{ '--stage': colour }} /> : null
})
