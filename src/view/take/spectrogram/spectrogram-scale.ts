import { SPECTROGRAM_LOWEST_HZ, spectrogramDb, spectrogramHighestHz } from '../../../core'

/** Printed at the edge of the lane, Hz. */
const TICKS = [
  [100, '100'],
  [1000, '1k'],
  [10_000, '10k'],
] as const

/** Frequencies with their place in a lane so high, from its top, CSS pixels. */
export function frequencyTicks(
  sampleRate: number,
  heightPx: number,
): readonly { readonly y: number; readonly label: string }[] {
  const highestHz = spectrogramHighestHz(sampleRate)
  const octaves = Math.log(highestHz / SPECTROGRAM_LOWEST_HZ)
  return TICKS.filter(([hz]) => hz < highestHz).map(([hz, label]) => ({
    y: (Math.log(highestHz / hz) / octaves) * heightPx,
    label,
  }))
}

/** A row this far below the peak of the take gets all of the ink, one `RANGE_DB` further down none. Chosen by eye. */
const FULL_INK_DB = 20
const RANGE_DB = 62
/** Above 1: what is faint stays fainter, so that a voice stands out from its room. */
const CONTRAST = 1.3
/** Of a take whose peak is not known, dBFS. */
const USUAL_PEAK_DBFS = -6

/** How much ink, 0 to 255, each byte of a spectrogram gets, in a take that peaks at `peakDbfs` (null: silent). */
export function inkTable(peakDbfs: number | null): Uint8ClampedArray {
  const full = (peakDbfs ?? USUAL_PEAK_DBFS) - FULL_INK_DB
  return Uint8ClampedArray.from({ length: 256 }, (_, byte) => {
    const share = 1 - (full - spectrogramDb(byte)) / RANGE_DB
    return 255 * Math.min(1, Math.max(0, share)) ** CONTRAST
  })
}
