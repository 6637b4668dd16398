import { durationSeconds, type Measures, type Sound } from '../../core'
import { formatNames } from '../../session/delivery'
import type { DeliveredFile, DeliveryState } from '../../session/delivery-store'
import { inWords } from '../words/in-words'
import { printTime } from '../words/time-text'

/** The formats offered, the usual one first. */
export const formats: readonly { readonly value: DeliveryState['format']; readonly label: string }[] = [
  { value: 'pcm24', label: `${formatNames.pcm24}, for further mixing` },
  { value: 'pcm16', label: formatNames.pcm16 },
  { value: 'float32', label: `${formatNames.float32}, which cannot clip` },
]

/** What the file will be. */
export function deliveredFacts(sound: Sound): string {
  const channels = sound.channels.length === 1 ? 'mono' : 'stereo'
  return `${sound.sampleRate / 1000} kHz, ${channels}, ${printTime(durationSeconds(sound))}: the whole take, even if a loop is set, aligned with the take to the sample.`
}

/** Why not to layer the file with the take it was made from. */
export const PHASE_WORDS =
  'Filters shift phase: use the file instead of the original, not layered with it: together they partly cancel.'

/**
 * What rounding to a format does; null where it does nothing worth knowing. The level is that of the total error of
 * triangular dither of two steps: a quarter of a step squared, -96.3 dBFS RMS at 16 bits (Lipshitz, Wannamaker,
 * Vanderkooy, JAES 40(5), 1992).
 */
export const ditherWords: Readonly<Record<DeliveryState['format'], string | null>> = {
  pcm16:
    '16 bits are dithered: steady noise at −96 dBFS RMS instead of distortion. A channel that has only 16-bit values is written unchanged.',
  pcm24: null,
  float32: null,
}

/** Whether a saved file was dithered; null where there is nothing to say. */
export function ditherNews({ format, isDithered }: DeliveredFile): string | null {
  if (format !== 'pcm16') return null
  return isDithered ? 'Dithered.' : 'No dither needed: every sample already had a 16-bit value.'
}

/** Where neither side that is compared is what will be delivered. */
export const OTHER_CHAIN_WORDS =
  'The file is the whole current chain, which is not what you hear now. To see its loudness and peak here, compare the whole chain and listen at its end.'

/** Loudness and peak of the file, "–" where they are not known. */
export function fileFigures(measures: Measures | null): string {
  const figure = (value: number | null | undefined, unit: string) => {
    if (value === undefined) return '–'
    return value === null ? 'not measurable' : `${inWords(value)} ${unit}`
  }
  return `Integrated loudness ${figure(measures?.integratedLufs, 'LUFS')}, true peak ${figure(measures?.truePeakDbtp, 'dBTP')}.`
}

/** What to do about samples that did not fit into the format; null when all did. */
export function clippedWarning(clippedSamples: number): string | null {
  if (clippedSamples === 0) return null
  const samples = clippedSamples === 1 ? '1 sample was' : `${clippedSamples} samples were`
  return `${samples} above full scale and clipped. Lower the gain at the end of the chain, or deliver 32-bit float.`
}
