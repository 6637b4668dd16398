export type MeasureErrorCode = 'sample-rate' | 'channels' | 'option'

/** A sound or an option that no measure is defined for; `code` says which. */
export class MeasureError extends Error {
  override readonly name = 'MeasureError'

  constructor(
    readonly code: MeasureErrorCode,
    message: string,
  ) {
    super(message)
  }
}
