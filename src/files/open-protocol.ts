import type { FileErrorCode } from './file-error'
import type { OpenedFile } from './open-file'

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
