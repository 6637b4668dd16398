import { isFlac, readFlacHeader } from './coded/flac-header'
import { FileError, readerNotLoaded } from './file-error'
import type { FileHeader } from './file-header'
import { isWav, peekWavHeader, readWavHeader, type WavCoding, type WavFacts } from './wav/wav-header'

/** Bytes read at first; enough for the header of nearly every WAV and FLAC file. */
const FIRST_BYTES = 2 ** 16

const WAV_CODECS: Readonly<Record<WavCoding, string>> = {
  pcm: 'PCM',
  float: 'float',
  'a-law': 'A-law',
  'mu-law': 'mu-law',
  other: 'unknown',
}

/**
 * Reads what a sound file's header says, by what is in the file and not by its name, without decoding it.
 *
 * @param file the file, or its bytes as a Blob
 * @param fileName for messages
 * @throws FileError 'empty', 'unreadable', 'not-audio', 'truncated', 'damaged', 'no-frames', or 'unsupported' for
 *   a sound file of an unsupported kind
 */
export async function readHeader(file: Blob, fileName: string): Promise<FileHeader> {
  if (file.size === 0) {
    const advice = 'If it lies in an online folder, download it first; else export it again.'
    throw new FileError('empty', fileName, 'is empty', advice)
  }
  const head = await readBytes(file.slice(0, FIRST_BYTES), fileName)
  if (isWav(head)) return wavHeader(await wavFacts(file, head, fileName))
  if (isFlac(head)) return readFlacHeader(head, fileName)
  const kind = unsupportedKind(head)
  if (kind) {
    throw new FileError(
      'unsupported',
      fileName,
      `is ${kind}, which is not supported`,
      'Export it as WAV or FLAC.',
    )
  }
  // Tried again with the next file: each is opened in a worker of its own, which keeps no failed import.
  const { readMediaHeader } = await import('./coded/media-header').catch((cause: unknown) => {
    throw readerNotLoaded(fileName, cause)
  })
  const header = await readMediaHeader(file, fileName)
  if (header) return header
  const advice = 'Open a WAV, FLAC, MP3, M4A or OGG file.'
  throw new FileError('not-audio', fileName, 'is not a sound file that Evenhand can read', advice)
}

/** Reads on, eight times as far each time, until the samples begin: there may be pictures or text before them. */
async function wavFacts(file: Blob, head: Uint8Array, fileName: string): Promise<WavFacts> {
  let bytes = head
  while (bytes.length < file.size) {
    const facts = peekWavHeader(bytes, fileName, file.size)
    if (facts) return facts
    bytes = await readBytes(file.slice(0, bytes.length * 8), fileName)
  }
  return readWavHeader(bytes, fileName)
}

function wavHeader(facts: WavFacts): FileHeader {
  const { coding, sampleRate, channels, bitsPerSample, frames } = facts
  return {
    container: 'WAV',
    codec: WAV_CODECS[coding],
    sampleRate,
    channels,
    bitsPerSample: coding === 'other' ? null : bitsPerSample,
    frames,
    durationSeconds: frames === null ? null : frames / sampleRate,
  }
}

/** Kinds of sound file that people do have but that browsers do not decode, by their first bytes. */
function unsupportedKind(head: Uint8Array): string | null {
  const text = (from: number, to: number) => String.fromCharCode(...head.subarray(from, to))
  if (text(0, 4) === 'FORM' && text(8, 11) === 'AIF') return 'an AIFF file'
  if (text(0, 4) === 'RIFX') return 'a big-endian WAV file'
  if (text(0, 4) === 'caff') return 'a CAF file'
  return null
}

/**
 * The bytes of `blob`, in memory of their own, which a browser's decoder may take away.
 * @throws FileError 'unreadable' when the file has gone, changed, or may not be read
 */
export async function readBytes(blob: Blob, fileName: string): Promise<Uint8Array<ArrayBuffer>> {
  try {
    return new Uint8Array(await blob.arrayBuffer())
  } catch (cause) {
    const advice = 'Check that it is still where it was and on this device, and open it again.'
    throw new FileError('unreadable', fileName, 'could not be read', advice, cause)
  }
}
