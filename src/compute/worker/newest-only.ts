/** What work is told about its request. */
export interface Turn {
  /** Whether nothing has been asked for since. */
  isNewest(): boolean
  /** Waits for `done`, or until something newer is asked for. */
  orNewer(done: Promise<void>): Promise<void>
}

/**
 * Does one piece of work at a time. Of what is asked for meanwhile only the newest is kept: whoever moves a control
 * wants to know where it is, not where it was.
 */
export class NewestOnly<Request> {
  private waiting: { readonly request: Request; readonly turn: number } | null = null
  private working = false
  private asked = 0
  private wake: () => void = () => undefined

  /** @param work must not throw; may stop early where its request is not the newest any more */
  constructor(private readonly work: (request: Request, turn: Turn) => Promise<void>) {}

  /** Does `request` as soon as what is under way has ended. */
  ask(request: Request): void {
    this.waiting = { request, turn: ++this.asked }
    this.wake()
    if (!this.working) void this.run()
  }

  /** Forgets what waits; what is under way is no longer the newest. */
  drop(): void {
    this.asked++
    this.waiting = null
    this.wake()
  }

  private async run(): Promise<void> {
    this.working = true
    for (let next = this.waiting; next !== null; next = this.waiting) {
      const { request, turn } = next
      this.waiting = null
      const isNewest = () => turn === this.asked
      await this.work(request, { isNewest, orNewer: (done) => this.orNewer(done, isNewest) })
    }
    this.working = false
  }

  private async orNewer(done: Promise<void>, isNewest: () => boolean): Promise<void> {
    if (!isNewest()) return
    const newer = new Promise<void>((resolve) => {
      this.wake = resolve
    })
    await Promise.race([done, newer])
  }
}
