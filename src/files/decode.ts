import { frameCount, type Sound } from '../core'
import { replaceBadSamples } from './clean-samples'
import { alignSound } from './coded/align'
import type { TimingDoubt } from './coded/coded-span'
import { FileError } from './file-error'
import type { FileHeader } from './file-header'
import { readBytes } from './header'
import { checkChannels, checkLength, decodeLimitMs, longestSeconds } from './limits'
import type { FileOpener } from './open-file'
import { openInWorker } from './open-in-worker'
import { restoreSixteenBitSteps } from './wav/sixteen-bit'
import { encodeWav } from './wav/wav-writer'
import { withinLimit } from './within-limit'

/** A decoded file. */
export interface DecodedTake {
  /** The file's name. */
  readonly name: string
  readonly sound: Sound
  readonly header: FileHeader
  /** Samples that were NaN, infinite or absurdly large and are now 0. */
  readonly replacedSamples: number
  /** What cannot be told of where its sound begins and ends; null where it is aligned to the sample. */
  readonly timing: TimingDoubt | null
}

/** The part of an AudioBuffer that is read here. */
export interface DecodedAudio {
  readonly sampleRate: number
  readonly numberOfChannels: number
  getChannelData(channel: number): Float32Array
}

/** Decodes a whole file at `sampleRate`. It may detach `bytes`, whether it succeeds or fails. */
export type AudioDecoder = (bytes: ArrayBuffer, sampleRate: number) => Promise<DecodedAudio>

export interface DecodeOptions {
  /** Stands in for the browser's decoder, in tests. */
  readonly decodeAudio?: AudioDecoder
  /** Stands in for a worker, in tests. */
  readonly open?: FileOpener
  /** Most memory the decoded sound may take, bytes. */
  readonly mostBytes?: number
  /** Cancels; decoding is then rejected with its reason. */
  readonly signal?: AbortSignal
}

/** Share of replaced samples above which a file is not sound at all. (No source: our own limit.) */
const MOST_REPLACED = 0.01

/** The browser's decoder, which resamples to its context's rate: the context is made for the rate wanted. */
const decodeInBrowser: AudioDecoder = async (bytes, sampleRate) =>
  new OfflineAudioContext(1, 1, sampleRate).decodeAudioData(bytes)

/**
 * Decodes a sound file at its own rate, sample for sample. WAV files are read here: browsers refuse some of them
 * (64-bit float), leave others pending (A-law) and scale 16 bits in ways of their own. The browser decodes everything else.
 *
 * @throws FileError with any of its codes; the message can be shown as it stands
 */
export async function decodeFile(file: File, options: DecodeOptions = {}): Promise<DecodedTake> {
  const { decodeAudio = decodeInBrowser, open = openInWorker, mostBytes, signal } = options
  const opened = await open(file, {
    ...(mostBytes !== undefined && { mostBytes }),
    ...(signal && { signal }),
  })
  const { header } = opened
  const { sound, timing } = opened.sound
    ? { sound: opened.sound, timing: null }
    : alignSound(await decodeAtOwnRate(file, header, decodeAudio, signal), header)
  const frames = frameCount(sound)
  checkChannels(sound.channels.length, file.name)
  if (frames === 0) {
    throw new FileError(
      'no-frames',
      file.name,
      'has no sound in it',
      'Export it again, or open another file.',
    )
  }
  if (header.frames !== null && frames < header.frames) {
    const seconds = (count: number) => `${(count / header.sampleRate).toFixed(2)} s`
    throw new FileError(
      'truncated',
      file.name,
      `is cut short: its header promises ${seconds(header.frames)} of sound, and ${seconds(frames)} is there`,
      'Copy or export it again from where it came, and check that the copy is complete.',
    )
  }
  const replacedSamples = opened.sound ? opened.replacedSamples : replaceBadSamples(sound.channels)
  if (replacedSamples > MOST_REPLACED * frames * sound.channels.length) {
    const advice = 'Export it again as WAV with 16 or 24 bits.'
    throw new FileError('damaged', file.name, 'holds numbers that are not sound', advice)
  }
  return { name: file.name, sound, header, replacedSamples, timing }
}

/**
 * Decodes a sound file and converts it to `sampleRate`, Hz: a backing has to run at the rate of the take. The browser
 * resamples, after bad samples are gone, because a single NaN would be smeared over its neighbours.
 *
 * @throws FileError as {@link decodeFile} does
 */
export async function decodeFileAtRate(
  file: File,
  sampleRate: number,
  options: DecodeOptions = {},
): Promise<DecodedTake> {
  const take = await decodeFile(file, options)
  const { sound } = take
  if (sound.sampleRate === sampleRate) return take
  const seconds = frameCount(sound) / sound.sampleRate
  checkLength(seconds, sampleRate, sound.channels.length, file.name, options.mostBytes)
  const { bytes } = encodeWav(sound, 'float32', { fileName: file.name })
  const { decodeAudio = decodeInBrowser, signal } = options
  const advice = `Convert it to ${sampleRate} Hz and open it again.`
  const resampling = decodeAudio(bytes.buffer, sampleRate).catch((cause: unknown) => {
    throw new FileError('unsupported', file.name, `could not be converted to ${sampleRate} Hz`, advice, cause)
  })
  const tooSlow = () =>
    new FileError('too-slow', file.name, `took too long to convert to ${sampleRate} Hz`, advice)
  const resampled = await withinLimit(resampling, decodeLimitMs(seconds), tooSlow, signal)
  return { ...take, sound: soundOf(resampled) }
}

async function decodeAtOwnRate(
  file: File,
  header: FileHeader,
  decodeAudio: AudioDecoder,
  signal: AbortSignal | undefined,
): Promise<Sound> {
  const { container, codec, bitsPerSample, sampleRate, durationSeconds } = header
  const what = `is ${container} with ${codec} sound, and this browser`
  const bytes = await readBytes(file, file.name)
  const limitMs = decodeLimitMs(durationSeconds ?? longestSeconds(bytes.length))
  const decoding = decodeAudio(bytes.buffer, sampleRate).catch((cause: unknown) => {
    const advice = 'It may be damaged, or of a kind this browser lacks: export it as WAV with 16 or 24 bits.'
    throw new FileError('unsupported', file.name, `${what} could not decode it`, advice, cause)
  })
  const tooSlow = () => {
    const advice = 'Export it as WAV with 16 or 24 bits, or try another browser.'
    return new FileError('too-slow', file.name, `${what} took too long to decode it`, advice)
  }
  const sound = soundOf(await withinLimit(decoding, limitMs, tooSlow, signal))
  if (bitsPerSample !== null && bitsPerSample <= 16) restoreSixteenBitSteps(sound.channels)
  return sound
}

function soundOf(audio: DecodedAudio): Sound {
  const channels = Array.from({ length: audio.numberOfChannels }, (_, channel) =>
    audio.getChannelData(channel),
  )
  return { sampleRate: audio.sampleRate, channels }
}
