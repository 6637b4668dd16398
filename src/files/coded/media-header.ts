import { ADTS, type AudioCodec, BlobSource, Input, type InputFormat, MP3, MP4, OGG } from 'mediabunny'
import { FileError } from '../file-error'
import type { FileHeader } from '../file-header'
import type { CodedSpan } from './coded-span'
import { readM4aSpan, readMovie } from './m4a-span'
import { ID3_HEADER_BYTES, MOST_MP3_FRAME_BYTES, mp3FrameOffset, readMp3Span } from './mp3-span'

const CONTAINERS: ReadonlyMap<InputFormat, FileHeader['container']> = new Map<
  InputFormat,
  FileHeader['container']
>([
  [MP3, 'MP3'],
  [MP4, 'M4A'],
  [OGG, 'OGG'],
  [ADTS, 'AAC'],
])

const CODECS: ReadonlyMap<AudioCodec, string> = new Map<AudioCodec, string>([
  ['aac', 'AAC'],
  ['mp3', 'MP3'],
  ['opus', 'Opus'],
  ['vorbis', 'Vorbis'],
  ['flac', 'FLAC'],
])

/**
 * Reads the header of an MP3, M4A, OGG or bare AAC file. Kept in a module of its own so that the library behind it
 * is loaded only when such a file comes.
 *
 * @returns the header; null when the file is none of these
 * @throws FileError 'damaged' when it is one of these but makes no sense, 'not-audio' when there is no sound in it
 */
export async function readMediaHeader(file: Blob, fileName: string): Promise<FileHeader | null> {
  const input = new Input({ formats: [...CONTAINERS.keys()], source: new BlobSource(file) })
  try {
    if (!(await input.canRead())) return null
    const container = CONTAINERS.get(await input.getFormat()) ?? 'M4A'
    const [track] = await input.getAudioTracks()
    if (!track) {
      const advice =
        'If there should be, it is damaged or cut short: copy or export it again from where it came.'
      throw new FileError('not-audio', fileName, 'has no sound in it that could be found', advice)
    }
    const [codec, internalCodec, sampleRate, channels, stated] = await Promise.all([
      track.getCodec(),
      track.getInternalCodecId(),
      track.getSampleRate(),
      track.getNumberOfChannels(),
      track.getDurationFromMetadata(),
    ])
    const unnamed = typeof internalCodec === 'string' ? internalCodec.toUpperCase() : 'unknown'
    return {
      container,
      codec: codec === null ? unnamed : (CODECS.get(codec) ?? codec),
      sampleRate,
      channels,
      bitsPerSample: null,
      frames: null,
      durationSeconds: stated ?? (await track.computeDuration()),
      span: await spanOf(file, codec, container, sampleRate),
    }
  } catch (error) {
    if (error instanceof FileError) throw error
    const advice = 'Copy or export it again from where it came, as WAV or FLAC if you can.'
    throw new FileError('damaged', fileName, 'has a header that cannot be made sense of', advice, error)
  } finally {
    input.dispose()
  }
}

/** Where the sound lies in what is decoded; null where the file does not say. */
async function spanOf(
  file: Blob,
  codec: AudioCodec | null,
  container: FileHeader['container'],
  sampleRate: number,
): Promise<CodedSpan | null> {
  const bytesAt = async (at: number, bytes: number) =>
    new Uint8Array(await file.slice(at, at + bytes).arrayBuffer())
  if (container === 'MP3') {
    const at = mp3FrameOffset(await bytesAt(0, ID3_HEADER_BYTES))
    return readMp3Span(await bytesAt(at, MOST_MP3_FRAME_BYTES))
  }
  if (container !== 'M4A' || codec !== 'aac') return null
  const movie = await readMovie(file)
  return movie && readM4aSpan(movie, sampleRate)
}
