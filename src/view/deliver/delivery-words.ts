import { durationSeconds, type Measures, plain, type Sound } from '../../core'
import { formatNames } from '../../state/delivery'
import type { DeliveryState } from '../../state/delivery-store'
import { printTime } from '../take/time-text'

/** The formats offered, the usual one first. */
export const formats: readonly { readonly value: DeliveryState['format']; readonly label: string }[] = [
  { value: 'pcm24', label: `${formatNames.pcm24}, for further mixing` },
  { value: 'pcm16', label: formatNames.pcm16 },
  { value: 'float32', label: `${formatNames.float32}, which cannot clip` },
]

/** What the file will be. */
export function deliveredFacts(sound: Sound): string {
  const channels = sound.channels.length === 1 ? 'mono' : 'stereo'
  return `${sound.sampleRate / 1000} kHz, ${channels}, ${printTime(durationSeconds(sound))}: the whole take, also where a loop is set. It begins and ends with the take, frame for frame.`
}

/** Why the file is not to be mixed with the take it was made from. */
export const PHASE_WORDS =
  'Filters change the shape of the wave as well as its spectrum: put the file in the place of the take, not beside it, or parts of both cancel.'

/** Where neither side that is compared is what will be delivered. */
export const OTHER_CHAIN_WORDS =
  'The file is the chain as it stands on the path, all of it: not what you are hearing now. Its loudness and peak stand here while the whole chain is compared, with the ear at its end.'

/** Loudness and peak of the file, "–" where they are not known. */
export function fileFigures(measures: Measures | null): string {
  const figure = (value: number | null | undefined, unit: string) => {
    if (value === undefined) return '–'
    return value === null ? 'not measurable' : `${plain(value, 1)} ${unit}`
  }
  return `Integrated loudness ${figure(measures?.integratedLufs, 'LUFS')}, true peak ${figure(measures?.truePeakDbtp, 'dBTP')}.`
}

/** What to do about samples that did not fit into the format; null when all did. */
export function clippedWarning(clippedSamples: number): string | null {
  if (clippedSamples === 0) return null
  const samples = clippedSamples === 1 ? '1 sample was' : `${clippedSamples} samples were`
  return `${samples} above full scale and clipped. Lower the gain at the end of the chain, or deliver 32-bit float.`
}
