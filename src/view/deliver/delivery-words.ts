import { durationSeconds, plainInSentence, type Sound, signedInSentence } from '../../core'
import { formatNames } from '../../session/delivery'
import type { DeliveredFile, DeliveryState, FileLevels } from '../../session/delivery-store'
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

/** Loudness and peak of the file, "–" while they are not known. */
export function fileFigures(levels: FileLevels | null): string {
  const figure = (value: number | null | undefined, unit: string, print = plainInSentence) => {
    if (value === undefined) return '–'
    return value === null ? 'not measurable' : `${print(value, 1)} ${unit}`
  }
  return `Integrated loudness ${figure(levels?.integratedLufs, 'LUFS')}, true peak ${figure(levels?.truePeakDbtp, 'dBTP', signedInSentence)}.`
}

/** That the file would clip, or that its peaks go above full scale; null where neither is so. */
export function clippingWords(
  { truePeakDbtp, samplesOver }: FileLevels,
  format: DeliveryState['format'],
): string | null {
  const peak = `true peak ${signedInSentence(truePeakDbtp ?? 0, 1)} dBTP`
  if (samplesOver > 0) {
    const samples = samplesOver === 1 ? '1 sample is' : `${samplesOver} samples are`
    return `This file would clip: ${samples} over full scale, ${peak}.`
  }
  if (truePeakDbtp === null || truePeakDbtp <= 0) return null
  return format === 'float32'
    ? `Peaks above full scale stay whole in float (${peak}), but clip where the file is played or converted without turning it down.`
    : `No sample clips, but the wave between samples goes above full scale: ${peak}. Players and coders may clip it.`
}

/** What to do about samples that did not fit into the format; null when all did. */
export function clippedWarning(clippedSamples: number): string | null {
  if (clippedSamples === 0) return null
  const samples = clippedSamples === 1 ? '1 sample was' : `${clippedSamples} samples were`
  return `${samples} over full scale and clipped. Lower the output, or deliver 32-bit float.`
}
