import type { Sound } from '../core'
import { replaceBadSamples } from './clean-samples'
import type { FileErrorCode } from './file-error'
import type { FileHeader } from './file-header'
import { readBytes, readHeader } from './header'
import { checkHeader } from './limits'
import { readWav } from './wav/wav-reader'

/** A file as far as it is read here. */
export interface OpenedFile {
  readonly header: FileHeader
  /** Null for files that the browser's decoder has to read. */
  readonly sound: Sound | null
  /** Samples that were NaN, infinite or absurdly large and are now 0. */
  readonly replacedSamples: number
}

export interface OpenOptions {
  /** Most memory the decoded sound may take, bytes. */
  readonly mostBytes?: number
  /** Told when the header has been read and is good. */
  readonly onHeader?: () => void
  /** Gives up; opening is then rejected with its reason. */
  readonly signal?: AbortSignal
}

/** What the page asks of a worker that opens one file. */
export interface FileWanted {
  readonly file: File
  /** Most memory the decoded sound may take, bytes. */
  readonly mostBytes: number | undefined
}

/** What it answers: `header` once that is read, then one of the others. */
export type FileAnswer =
  | { readonly type: 'header' }
  | { readonly type: 'opened'; readonly opened: OpenedFile }
  /** A FileError, taken apart: errors lose their class on the way. */
  | {
      readonly type: 'failed'
      readonly code: FileErrorCode
      readonly problem: string
      readonly advice: string
    }

/** Codings of WAV files that are read here. Browsers differ over each of them, or leave it pending for good. */
const READ_HERE: ReadonlySet<string> = new Set(['PCM', 'float', 'A-law', 'mu-law'])

/** {@link openFile}, wherever it is done. */
export type FileOpener = (file: File, options: OpenOptions) => Promise<OpenedFile>

/**
 * Reads the header of a sound file, and WAV files whole.
 * @throws FileError with any of its codes but 'too-slow' and 'no-frames'
 */
export const openFile: FileOpener = async (file, { mostBytes, onHeader, signal }) => {
  const header = await readHeader(file, file.name)
  checkHeader(header, file.name, mostBytes)
  onHeader?.()
  signal?.throwIfAborted()
  if (header.container !== 'WAV' || !READ_HERE.has(header.codec)) {
    return { header, sound: null, replacedSamples: 0 }
  }
  const { sound } = readWav(await readBytes(file, file.name), file.name)
  return { header, sound, replacedSamples: replaceBadSamples(sound.channels) }
}
