/** Why nothing is heard, where the user can do something about it. */
export type PlayerErrorCode = 'no-audio' | 'no-output' | 'blocked' | 'stopped'

/** Playing that did not work. The message says what to do. */
export class PlayerError extends Error {
  override readonly name = 'PlayerError'

  constructor(
    readonly code: PlayerErrorCode,
    message: string,
    options?: ErrorOptions,
  ) {
    super(message, options)
  }
}
