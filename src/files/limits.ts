import { FileError } from './file-error'
import type { FileHeader } from './file-header'

/** Sample rates supported, Hz. */
export const LOWEST_RATE_HZ = 8000
export const HIGHEST_RATE_HZ = 192000

/** Most channels supported: a vocal take or a backing is mono or stereo. */
export const MOST_CHANNELS = 2

/**
 * Most memory that one decoded file may take, bytes: 93 minutes of mono or 46 of stereo at 48 kHz, 11 of stereo at
 * 192 kHz. Several copies live at once while a chain is judged, and a page has a few GiB at best. (No source: our
 * own limit.)
 */
export const MOST_DECODED_BYTES = 2 ** 30

/** Most time a header may take, ms: one that is damaged can keep its reader busy for minutes. (Our own limit.) */
export const HEADER_LIMIT_MS = 8000

/** Time that any decoding may take, ms, and what is added for each second of sound. (Our own limits.) */
const DECODE_LIMIT_MS = 30_000
const DECODE_LIMIT_MS_PER_SECOND = 100

/** Fewest bytes that a second of coded sound is taken to have: 32 kbit/s. (Our own estimate.) */
const FEWEST_BYTES_PER_SECOND = 4000

/**
 * Most time that `durationSeconds` of sound may take to decode, ms. Decoders work a hundred times as fast as the sound
 * runs, and more; one that is ten times as slow as that will not answer at all.
 */
export function decodeLimitMs(durationSeconds: number): number {
  return DECODE_LIMIT_MS + DECODE_LIMIT_MS_PER_SECOND * durationSeconds
}

/** The longest that coded sound of `bytes` bytes may last where its header does not say, seconds. */
export function longestSeconds(bytes: number): number {
  return bytes / FEWEST_BYTES_PER_SECOND
}

/** What a sound takes in memory, bytes: four for each sample. */
export function decodedBytes(durationSeconds: number, sampleRate: number, channels: number): number {
  return Math.ceil(durationSeconds * sampleRate) * channels * Float32Array.BYTES_PER_ELEMENT
}

/**
 * Refuses an unsupported file before the work of decoding it.
 * @throws FileError 'unsupported' (rate, channels) or 'too-long'
 */
export function checkHeader(header: FileHeader, fileName: string, mostBytes = MOST_DECODED_BYTES): void {
  const { sampleRate, channels, durationSeconds } = header
  if (!(sampleRate >= LOWEST_RATE_HZ && sampleRate <= HIGHEST_RATE_HZ)) {
    throw new FileError(
      'unsupported',
      fileName,
      `has a sample rate of ${sampleRate} Hz; ${LOWEST_RATE_HZ} to ${HIGHEST_RATE_HZ} Hz are supported`,
      'Convert it to 44100 or 48000 Hz and open it again.',
    )
  }
  checkChannels(channels, fileName)
  if (durationSeconds !== null) checkLength(durationSeconds, sampleRate, channels, fileName, mostBytes)
}

/** @throws FileError 'unsupported' unless there are one or two channels */
export function checkChannels(channels: number, fileName: string): void {
  if (channels >= 1 && channels <= MOST_CHANNELS) return
  const advice = 'Export the channel with the voice, or a stereo mix, and open that.'
  throw new FileError(
    'unsupported',
    fileName,
    `has ${channels} channels; mono and stereo are supported`,
    advice,
  )
}

/** @throws FileError 'too-long' when the sound would take more than `mostBytes` of memory */
export function checkLength(
  durationSeconds: number,
  sampleRate: number,
  channels: number,
  fileName: string,
  mostBytes = MOST_DECODED_BYTES,
): void {
  if (decodedBytes(durationSeconds, sampleRate, channels) <= mostBytes) return
  const minutes = (seconds: number) => (seconds / 60).toFixed(1)
  const most = mostBytes / decodedBytes(1, sampleRate, channels)
  throw new FileError(
    'too-long',
    fileName,
    `lasts ${minutes(durationSeconds)} minutes; at its rate and channels, ${minutes(most)} fit in memory`,
    'Cut it into parts, or lower its sample rate, and open it again.',
  )
}
