import { FileError } from '../file-error'
import { EXTENSIBLE_FMT_BYTES, FMT_BYTES, FORMAT_TAG, SIZE_UNKNOWN, SUB_FORMAT_OFFSET } from './wav-format'

/** How the samples of a WAV file are coded; 'other' for what only a browser may know how to decode. */
export type WavCoding = 'pcm' | 'float' | 'a-law' | 'mu-law' | 'other'

/** What the header of a WAV file says, checked against the file. */
export interface WavFacts {
  readonly coding: WavCoding
  /** The registered format tag (RFC 2361), after looking through an extensible header. */
  readonly formatTag: number
  readonly sampleRate: number
  readonly channels: number
  /** Bits that carry sound; may be fewer than the word holds. */
  readonly bitsPerSample: number
  /** Bytes of one sample of one channel; null for coding 'other'. */
  readonly bytesPerSample: number | null
  /** Whole frames the file holds; null for coding 'other'. */
  readonly frames: number | null
  /** Where the samples begin in the file, and how many bytes of them there are. */
  readonly dataOffset: number
  readonly dataBytes: number
}

type Format = Omit<WavFacts, 'frames' | 'dataOffset' | 'dataBytes'>

const CODINGS: ReadonlyMap<number, WavCoding> = new Map<number, WavCoding>([
  [FORMAT_TAG.pcm, 'pcm'],
  [FORMAT_TAG.float, 'float'],
  [FORMAT_TAG.aLaw, 'a-law'],
  [FORMAT_TAG.muLaw, 'mu-law'],
])

const EXPORT_AGAIN = 'Export it again as WAV, or open another file.'
const COPY_AGAIN = 'Copy or export it again from where it came, and check that the copy is complete.'

/** Whether `head`, the first bytes of a file, opens a WAV file (RIFF, or its 64-bit forms RF64 and BW64). */
export function isWav(head: Uint8Array): boolean {
  if (head.length < 12) return false
  const view = viewOf(head)
  return ['RIFF', 'RF64', 'BW64'].includes(fourCc(view, 0)) && fourCc(view, 8) === 'WAVE'
}

/**
 * Reads the header of a WAV file held whole in `bytes`.
 * @throws FileError as {@link peekWavHeader} does
 */
export function readWavHeader(bytes: Uint8Array, fileName: string): WavFacts {
  const facts = peekWavHeader(bytes, fileName, bytes.length)
  if (!facts) throw noFrames(fileName)
  return facts
}

/**
 * Reads the header of a WAV file: the chunks up to and including the header of 'data'. Takes RIFF, RF64 (EBU
 * Tech 3306) and BW64 (ITU-R BS.2088), extensible formats, chunks of any kind and of odd length, and a data size
 * left at 0xFFFFFFFF by a program that could not go back to fill it in (the sound then runs to the end).
 *
 * @param head the file from its first byte on, as much of it as there is
 * @param fileName for messages
 * @param fileBytes length of the whole file
 * @returns the facts; null when 'data' was not reached within `head`
 * @throws FileError 'not-audio', 'damaged', 'truncated' or 'no-frames'
 */
export function peekWavHeader(head: Uint8Array, fileName: string, fileBytes: number): WavFacts | null {
  if (!isWav(head)) {
    throw new FileError('not-audio', fileName, 'is not a WAV file, whatever its name says', EXPORT_AGAIN)
  }
  const view = viewOf(head)
  let format: Format | null = null
  let longDataBytes: number | null = null
  let at = 12
  while (at + 8 <= head.length) {
    const id = fourCc(view, at)
    const size = view.getUint32(at + 4, true)
    const body = at + 8
    if (id === 'data') {
      if (!format)
        throw new FileError('damaged', fileName, 'does not say how its sound is coded', EXPORT_AGAIN)
      const declared = size === SIZE_UNKNOWN ? (longDataBytes ?? fileBytes - body) : size
      return withData(format, body, declared, fileName, fileBytes)
    }
    if (body + size > fileBytes) {
      throw new FileError(
        'truncated',
        fileName,
        'ends in the middle of its header, before any sound',
        COPY_AGAIN,
      )
    }
    if ((id === 'fmt ' || id === 'ds64') && body + size > head.length) return null
    if (id === 'fmt ') format = readFormat(view, body, size, fileName)
    if (id === 'ds64' && size >= 16) longDataBytes = Number(view.getBigUint64(body + 8, true))
    at = body + size + (size % 2)
  }
  return null
}

function withData(
  format: Format,
  dataOffset: number,
  declared: number,
  fileName: string,
  fileBytes: number,
): WavFacts {
  const held = fileBytes - dataOffset
  const { bytesPerSample, channels, sampleRate } = format
  const blockAlign = bytesPerSample === null ? null : bytesPerSample * channels
  if (declared > held) {
    const extent = (bytes: number) =>
      blockAlign === null ? `${bytes} bytes` : `${(bytes / blockAlign / sampleRate).toFixed(2)} s`
    throw new FileError(
      'truncated',
      fileName,
      `is cut short: its header promises ${extent(declared)} of sound, and ${extent(held)} is there`,
      COPY_AGAIN,
    )
  }
  const frames = blockAlign === null ? null : Math.floor(declared / blockAlign)
  if (declared === 0 || frames === 0) throw noFrames(fileName)
  return { ...format, frames, dataOffset, dataBytes: declared }
}

function readFormat(view: DataView, at: number, size: number, fileName: string): Format {
  if (size < FMT_BYTES) throw damagedFormat(fileName)
  const plainTag = view.getUint16(at, true)
  const channels = view.getUint16(at + 2, true)
  const sampleRate = view.getUint32(at + 4, true)
  const blockAlign = view.getUint16(at + 12, true)
  const wordBits = view.getUint16(at + 14, true)
  const extensible = plainTag === FORMAT_TAG.extensible && size >= EXTENSIBLE_FMT_BYTES
  const formatTag = extensible ? view.getUint16(at + SUB_FORMAT_OFFSET, true) : plainTag
  const validBits = extensible ? view.getUint16(at + FMT_BYTES + 2, true) : 0
  const coding = CODINGS.get(formatTag) ?? 'other'
  if (channels === 0 || sampleRate === 0) throw damagedFormat(fileName)

  // A word may be wider than the bits in it (20 bits in three bytes): the block says how wide it is.
  const bytesPerSample = coding === 'other' ? null : blockAlign / channels
  if (bytesPerSample !== null && bytesPerSample !== Math.ceil(wordBits / 8)) throw damagedFormat(fileName)
  if (bytesPerSample === 0) throw damagedFormat(fileName)
  const bitsPerSample = validBits > 0 && validBits <= wordBits ? validBits : wordBits
  return { coding, formatTag, sampleRate, channels, bitsPerSample, bytesPerSample }
}

function damagedFormat(fileName: string): FileError {
  return new FileError('damaged', fileName, 'describes its sound in a way that makes no sense', EXPORT_AGAIN)
}

function noFrames(fileName: string): FileError {
  return new FileError('no-frames', fileName, 'has a header but no sound in it', EXPORT_AGAIN)
}

function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
}

function fourCc(view: DataView, at: number): string {
  return String.fromCharCode(
    view.getUint8(at),
    view.getUint8(at + 1),
    view.getUint8(at + 2),
    view.getUint8(at + 3),
  )
}
