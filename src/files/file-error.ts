import { isolated } from './file-name'

/** What is wrong with a file. Branch on this, never on the message. */
export type FileErrorCode =
  /** The file has no bytes. */
  | 'empty'
  /** The file is gone, or the browser may not read it. */
  | 'unreadable'
  /** Not a sound file, whatever its name says. */
  | 'not-audio'
  /** The file ends before its header says it should. */
  | 'truncated'
  /** The header contradicts itself, or the samples are not sound. */
  | 'damaged'
  /** A sound file without a single frame of sound. */
  | 'no-frames'
  /** A sound file, but of a kind, rate or channel count that is not supported. */
  | 'unsupported'
  /** Too much sound for the memory or for the file format. */
  | 'too-long'
  /** Reading its header, or decoding it, took longer than it does for any good file. */
  | 'too-slow'

/** A file that cannot be opened or written. The message is made to be shown as it stands. */
export class FileError extends Error {
  override readonly name = 'FileError'

  /**
   * @param code what is wrong
   * @param fileName the file as the user knows it
   * @param problem what happened, a phrase that follows the file's name, e.g. "is empty"
   * @param advice what to do about it, a whole sentence
   * @param cause the error underneath, for those who debug; never shown
   */
  constructor(
    readonly code: FileErrorCode,
    readonly fileName: string,
    readonly problem: string,
    readonly advice: string,
    cause?: unknown,
  ) {
    super(`“${isolated(fileName)}” ${problem}. ${advice}`, { cause })
  }
}

/** A file that could not be read, for a reason not known here. */
export function unreadable(fileName: string, cause: unknown): FileError {
  return new FileError('unreadable', fileName, 'could not be read', 'Try again, or open another file.', cause)
}

/** A file whose reader, a script of the page, did not load. */
export function readerNotLoaded(fileName: string, cause: unknown): FileError {
  return new FileError(
    'unreadable',
    fileName,
    'was not opened: the part of Evenhand that reads it could not be loaded',
    'Check the connection and open the file again; if that fails, reload the page.',
    cause,
  )
}
