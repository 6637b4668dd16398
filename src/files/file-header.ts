import type { CodedSpan } from './coded/coded-span'

/** What the header of a sound file says about the sound in it. */
export interface FileHeader {
  readonly container: 'WAV' | 'FLAC' | 'MP3' | 'M4A' | 'OGG' | 'AAC'
  /** The coding, as the trade calls it, e.g. "PCM", "float", "FLAC", "AAC", "Vorbis". */
  readonly codec: string
  /** Frames per second, Hz. */
  readonly sampleRate: number
  readonly channels: number
  /** Bits of one sample; null for codings that have no such thing. */
  readonly bitsPerSample: number | null
  /** Exact number of frames; null where the header does not state it. */
  readonly frames: number | null
  /** Length in seconds, about right for lossy files; null when unknown. */
  readonly durationSeconds: number | null
  /** Where the sound of a lossy file lies in what is decoded, if it states it. */
  readonly span?: CodedSpan | null
}
