/** A session document that cannot be read. Its message is made to be shown. */
export class SessionError extends Error {
  override readonly name = 'SessionError'

  private constructor(
    /** `newer`: written by a later version of the program; `invalid`: not as it should be. */
    readonly code: 'newer' | 'invalid',
    /** Where in the document, such as `trials[2].rounds`; '' is the document itself. */
    readonly path: string,
    message: string,
  ) {
    super(message)
  }

  /**
   * @param expected what should have stood at `path`
   * @param received what did, as short text
   */
  static invalid(path: string, expected: string, received: string): SessionError {
    return new SessionError('invalid', path, `${path || 'session'}: expected ${expected}, got ${received}`)
  }

  static newer(version: number, known: number): SessionError {
    return new SessionError(
      'newer',
      'version',
      `This session was saved by a newer version of Evenhand (format ${version}; this one reads up to ${known}). Reload the page to get the latest version, then open it again.`,
    )
  }
}
