/** An invalid chain document. Says where, what was expected there and what was found. */
export class ChainError extends Error {
  override readonly name = 'ChainError'

  /**
   * @param path where in the document, such as `stages[2].settings.ratio`; '' is the document itself
   * @param expected what was expected there
   * @param received what was found, as short text
   */
  constructor(
    readonly path: string,
    readonly expected: string,
    readonly received: string,
  ) {
    super(`${path || 'chain'}: expected ${expected}, got ${received}`)
  }
}
