import { durationSeconds, type Sound } from '../../core'
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
  return `${sound.sampleRate / 1000} kHz, ${channels}, ${printTime(durationSeconds(sound))}: it begins and ends with the take, frame for frame. Filters turn the phase around where they work.`
}

/** What to do about samples that did not fit into the format; null when all did. */
export function clippedWarning(clippedSamples: number): string | null {
  if (clippedSamples === 0) return null
  const samples = clippedSamples === 1 ? '1 sample was' : `${clippedSamples} samples were`
  return `${samples} above full scale and clipped. Lower the gain at the end of the chain, or deliver 32-bit float.`
}
