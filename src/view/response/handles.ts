import {
  type BandSettings,
  bandDesignOf,
  bandLetter,
  bandParameters,
  bandsOf,
  type ChainDoc,
  type EqualiserDesign,
  magnitudeDb,
  numberedBand,
  numberedStage,
  usedBandSettings,
} from '../../core'
import { asPrinted } from '../controls/positions'
import type { Plot } from './plot'

/** One band that can be dragged on the plot. */
export interface Handle {
  /** Tells it from all others, for as long as its stage has as many bands. */
  readonly key: string
  readonly stageId: string
  readonly bandIndex: number
  /** What is written on it: "2a". */
  readonly label: string
  /** "2 Equaliser, band a". */
  readonly name: string
  readonly band: BandSettings
  readonly on: boolean
  /** Whether dragging up and down sets a gain; passes and notches have none. */
  readonly hasGain: boolean
  /** Where on the dB scale it stands. */
  readonly heightDb: number
  /** Where it stands, CSS pixels. */
  readonly left: number
  readonly top: number
  /** Where the 0 dB line is, CSS pixels. */
  readonly zeroTop: number
}

/** Handles of every band in the chain. */
export function handlesOf(chain: ChainDoc, plot: Plot, sampleRate: number): Handle[] {
  const zeroTop = plot.y(0)
  return chain.stages.flatMap((stage, stageIndex) =>
    (bandsOf(stage) ?? []).map((band, bandIndex) => {
      const atDb = heightDb(band, sampleRate, bandDesignOf(stage))
      return {
        key: `${stage.id} ${bandIndex}`,
        stageId: stage.id,
        bandIndex,
        label: numberedBand(stageIndex, bandIndex),
        name: `${numberedStage(stageIndex, stage.kind)}, band ${bandLetter(bandIndex)}`,
        band,
        on: stage.on && band.on,
        hasGain: usedBandSettings(band).gain,
        heightDb: atDb,
        left: plot.x(band.frequencyHz),
        top: plot.y(atDb),
        zeroTop,
      }
    }),
  )
}

/** Where on the dB scale a handle stands: at its gain, a pass at what it does at its corner, a notch on the line. */
function heightDb(band: BandSettings, sampleRate: number, design: EqualiserDesign): number {
  if (usedBandSettings(band).gain) return band.gainDb
  if (band.shape === 'notch') return 0
  return magnitudeDb({ ...band, on: true }, [band.frequencyHz], sampleRate, design)[0] ?? 0
}

/** What dragging a handle to a point of the plot sets: frequency, and gain where the band has one. */
export function settingsAt(
  plot: Plot,
  { hasGain }: Pick<Handle, 'hasGain'>,
  left: number,
  top: number,
): Partial<BandSettings> {
  const { frequencyHz, gainDb } = bandParameters
  const hz = frequencyHz.type === 'number' ? asPrinted(frequencyHz, plot.x.invert(left)) : undefined
  const db = gainDb.type === 'number' ? asPrinted(gainDb, plot.y.invert(top)) : undefined
  return {
    ...(hz !== undefined && { frequencyHz: hz }),
    ...(hasGain && db !== undefined && { gainDb: db }),
  }
}
