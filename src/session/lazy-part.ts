/** Code of the app that could not be loaded. The message is made to be shown. */
export class PartError extends Error {
  override readonly name = 'PartError'

  /** @param what was to be loaded, as it begins a sentence, in the singular */
  constructor(what: string, options?: ErrorOptions) {
    super(
      `${what} could not be loaded. Check the connection and try again. If it fails again, a newer version may have been published: copy the settings you want to keep, then reload the page.`,
      options,
    )
  }
}

/** Code that is fetched when it is first needed, so that the page starts without it. */
export interface LazyPart<Part> {
  /** The part; null until it has been loaded. */
  readonly loaded: Part | null
  /**
   * Fetches the part, once however often it is asked for; after a failure the next call fetches again.
   * @throws PartError
   */
  load(): Promise<Part>
}

/**
 * @param what the part is, as it begins a sentence, in the singular
 * @param fetchPart a dynamic import
 */
export function lazyPart<Part>(what: string, fetchPart: () => Promise<Part>): LazyPart<Part> {
  let loaded: Part | null = null
  let loading: Promise<Part> | null = null
  const fetchAgain = async (): Promise<Part> => {
    try {
      loaded = await fetchPart()
      return loaded
    } catch (cause) {
      throw new PartError(what, { cause })
    } finally {
      loading = null
    }
  }
  return {
    get loaded() {
      return loaded
    },
    async load() {
      if (loaded !== null) return loaded
      loading ??= fetchAgain()
      return loading
    },
  }
}
