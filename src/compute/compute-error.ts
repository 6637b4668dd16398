export type ComputeErrorCode =
  /** The browser has no workers. */
  | 'no-workers'
  /** The script of the workers did not load. */
  | 'not-loaded'
  /** Workers stopped answering again and again. */
  | 'stopped'
  /** The work itself failed. */
  | 'failed'

/** Something that could not be worked out; the message is made to be shown. */
export class ComputeError extends Error {
  override readonly name = 'ComputeError'

  constructor(
    readonly code: ComputeErrorCode,
    message: string,
  ) {
    super(message)
  }
}
