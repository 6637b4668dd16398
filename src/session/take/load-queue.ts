/** What makes another request pointless. */
export interface Superseding {
  /** As the first half of a sentence: "the demo was opened". */
  readonly words: string
  /** The file that was asked for instead, if it was one. */
  readonly file: File | null
}

/** How a request to load something ended, with what its answer has to say. */
export type LoadEnding =
  | { readonly kind: 'in' }
  | { readonly kind: 'failed'; readonly error: unknown }
  | { readonly kind: 'superseded'; readonly by: Superseding }
  /** What it goes with did not come in. */
  | { readonly kind: 'left-out'; readonly without: string }
  | { readonly kind: 'stopped' }

/** Something to be loaded. */
export interface LoadRequest {
  /** A take supersedes everything that is still to come; a backing waits for the take it goes with. */
  readonly slot: 'take' | 'backing'
  readonly name: string
  /** What this is for the requests that it supersedes. */
  readonly superseding: Superseding
  /** Loads, and returns what puts the loaded thing in place. */
  load(signal: AbortSignal): Promise<() => void>
}

interface Entry extends LoadRequest {
  readonly abort: AbortController
  readonly answer: (ending: LoadEnding) => void
  answered: boolean
}

/**
 * Loads one thing at a time and gives each request exactly one ending. The newest wins: a slow file can never
 * replace one that was chosen after it, and nothing waits for a load that was given up.
 */
export class LoadQueue {
  private running: Entry | null = null
  /** At most one, since a newer backing supersedes it: the backing of the take that is being loaded. */
  private waiting: Entry | null = null

  /** @param onLoading told the name of what is being loaded, null when there is nothing */
  constructor(private readonly onLoading: (name: string | null) => void) {}

  /** @returns how it ended, once it has */
  add(request: LoadRequest): Promise<LoadEnding> {
    this.supersede(request.slot, request.superseding)
    return new Promise((resolve) => {
      const entry = { ...request, abort: new AbortController(), answer: resolve, answered: false }
      if (this.running) this.waiting = entry
      else this.start(entry)
    })
  }

  /** Gives up everything that is still to come. */
  supersedeAll(by: Superseding): void {
    this.supersede('take', by)
  }

  /** Gives up the backing that is being loaded for the take in place. */
  supersedeBacking(by: Superseding): void {
    if (this.running?.slot === 'backing') this.supersede('backing', by)
  }

  /** Gives up what is being loaded, and what waits for it. */
  stop(): void {
    if (this.running) this.end(this.running, { kind: 'stopped' })
  }

  private supersede(slot: LoadRequest['slot'], by: Superseding): void {
    const { running, waiting } = this
    const isSuperseded = (entry: Entry | null): entry is Entry =>
      entry !== null && (slot === 'take' || entry.slot === 'backing')
    const next = isSuperseded(waiting) ? waiting : null
    // Taken out first, or it would begin when what runs ends.
    if (next) this.waiting = null
    if (isSuperseded(running)) this.end(running, { kind: 'superseded', by })
    if (next) settle(next, { kind: 'superseded', by })
  }

  private start(entry: Entry): void {
    this.running = entry
    this.onLoading(entry.name)
    entry.load(entry.abort.signal).then(
      (place) => this.arrive(entry, place),
      (error: unknown) => this.end(entry, { kind: 'failed', error }),
    )
  }

  private arrive(entry: Entry, place: () => void): void {
    if (entry.answered) return
    try {
      place()
    } catch (error) {
      this.end(entry, { kind: 'failed', error })
      return
    }
    this.end(entry, { kind: 'in' })
  }

  /** Ends what runs, and goes on with what waits for it. */
  private end(entry: Entry, ending: LoadEnding): void {
    if (entry.answered) return
    const next = this.waiting
    this.running = null
    this.waiting = null
    settle(entry, ending)
    if (next && ending.kind === 'in') {
      this.start(next)
      return
    }
    if (next) settle(next, { kind: 'left-out', without: entry.name })
    this.onLoading(null)
  }
}

function settle(entry: Entry, ending: LoadEnding): void {
  entry.answered = true
  entry.abort.abort()
  entry.answer(ending)
}
