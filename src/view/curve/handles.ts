import {
  type BandSettings,
  bandDesignOf,
  bandParameters,
  bandsOf,
  type ChainDoc,
  type EqualiserDesign,
  magnitudeDb,
  usedBandSettings,
} from '../../core'
import { asPrinted } from '../controls/positions'
import type { Plot } from './plot'

/** One band that can be dragged on the plot. */
export interface Handle {
  readonly stageId: string
  /** Position of its stage in the chain, from 0. */
  readonly stageIndex: number
  readonly bandIndex: number
  readonly band: BandSettings
  readonly on: boolean
  /** Whether dragging up and down sets a gain; passes and notches have none. */
  readonly hasGain: boolean
  /** Where on the dB scale it stands. */
  readonly heightDb: number
  /** Where it stands, CSS pixels. */
  readonly left: number
  readonly top: number
  /** Where the 0 dB line stands below or above it, CSS pixels from it: positive is below. */
  readonly toZero: number
  /** Which side of its point the letter is written on: away from 0 dB, unless that is off the plot. */
  readonly letterAbove: boolean
}

/** Room that a letter needs, CSS pixels at the usual text size. */
const LETTER_PX = 26

/** Handles of every band in the chain. */
export function handlesOf(chain: ChainDoc, plot: Plot, sampleRate: number): Handle[] {
  const zero = plot.y(0)
  const letter = LETTER_PX * plot.textScale
  return chain.stages.flatMap((stage, stageIndex) =>
    (bandsOf(stage) ?? []).map((band, bandIndex) => {
      const atDb = heightDb(band, sampleRate, bandDesignOf(stage))
      const top = plot.y(atDb)
      return {
        stageId: stage.id,
        stageIndex,
        bandIndex,
        band,
        on: stage.on && band.on,
        hasGain: usedBandSettings(band).gain,
        heightDb: atDb,
        left: plot.x(band.frequencyHz),
        top,
        toZero: zero - top,
        letterAbove: top <= zero ? top > letter : top + letter > plot.height,
      }
    }),
  )
}

/** Whether two handles have the same position and the same band object. */
export function sameHandle(a: Handle, b: Handle): boolean {
  const others = Object.values(b)
  return Object.values(a).every((value, i) => value === others[i])
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
