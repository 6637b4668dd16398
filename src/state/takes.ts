import type { StoreApi } from 'zustand/vanilla'
import { FileError } from '../audio/files/file-error'
import type { BenchWorker } from '../audio/worker/bench-worker'
import { DemoError, loadDemo } from './load-demo'
import type { Replaced, TakeState } from './take-store'

/** What reads files is fetched when there is one to read: the page comes in sooner without it. */
const fileReading = () => import('../audio/files/decode')

/** Brings takes and backings onto the bench. What fails is told in the store; what was there stays there. */
export class Takes {
  /** Counts attempts, so that a slow file cannot replace one that was chosen after it. */
  private attempt = 0
  /** Ends the work of the attempt under way. */
  private abort = new AbortController()

  constructor(
    private readonly store: StoreApi<TakeState>,
    private readonly worker: Pick<BenchWorker, 'setTake'>,
    /** Told when another take or backing is in place. */
    private readonly onChange: (what: 'take' | 'backing') => void,
  ) {}

  /** Takes in a file as the take. A backing that was opened stays if it has the same rate; the demo's goes. */
  async openTake(file: File): Promise<void> {
    await this.attemptTo(file.name, async (isCurrent, signal) => {
      const { decodeFile } = await fileReading()
      const { name, sound, header, replacedSamples } = await decodeFile(file, { signal })
      if (!isCurrent()) return
      const { backing } = this.store.getState()
      const goesOn = backing?.sound.sampleRate === sound.sampleRate && !backing.ofDemo
      const take = { name, sound, header, replacedSamples, measures: null }
      await this.place({ take, backing: goesOn ? backing : null }, null)
    })
  }

  /** Takes in a file as the backing, brought to the take's rate. */
  async openBacking(file: File): Promise<void> {
    const { take } = this.store.getState()
    if (!take) return
    await this.attemptTo(file.name, async (isCurrent, signal) => {
      const { decodeFileAtRate } = await fileReading()
      const { name, sound } = await decodeFileAtRate(file, take.sound.sampleRate, { signal })
      if (!isCurrent()) return
      this.store.setState({ backing: { name, sound } })
      this.onChange('backing')
    })
  }

  /** Puts the built-in demo and its backing on the bench. What somebody had opened can be brought back. */
  async openDemo(): Promise<void> {
    await this.attemptTo('the demo', async (isCurrent) => {
      const { title, vocal, backing } = await loadDemo()
      if (!isCurrent()) return
      const take = { name: title, sound: vocal, header: null, replacedSamples: 0, measures: null }
      const demo = { take, backing: { name: `${title}, backing`, sound: backing, ofDemo: true } as const }
      await this.place(demo, this.opened() ?? this.store.getState().replaced)
    })
  }

  /** Brings back what the demo took the place of. */
  async bringBack(): Promise<void> {
    const { replaced } = this.store.getState()
    if (!replaced) return
    await this.attemptTo(replaced.take.name, () => this.place(replaced, null))
  }

  /** Lets go of what the demo took the place of. */
  forgetReplaced(): void {
    this.store.setState({ replaced: null })
  }

  /** Takes the backing off the bench. */
  removeBacking(): void {
    this.store.setState({ backing: null })
    this.onChange('backing')
  }

  /** Stops taking in what is being taken in. What was on the bench stays there. */
  cancel(): void {
    this.attempt++
    this.abort.abort()
    this.store.setState({ loading: null })
  }

  dismissProblem(): void {
    this.store.setState({ problem: null })
  }

  /** What is on the bench, if somebody opened any of it. */
  private opened(): Replaced | null {
    const { take, backing } = this.store.getState()
    const own = take && (take.header !== null || (backing && !backing.ofDemo))
    return own ? { take, backing } : null
  }

  private async place({ take, backing }: Replaced, replaced: Replaced | null): Promise<void> {
    this.store.setState({ take, backing, replaced })
    this.onChange('take')
    const measures = await this.worker.setTake(take.sound)
    if (this.store.getState().take === take) this.store.setState({ take: { ...take, measures } })
  }

  private async attemptTo(
    loading: string,
    work: (isCurrent: () => boolean, signal: AbortSignal) => Promise<void>,
  ): Promise<void> {
    const attempt = ++this.attempt
    this.abort.abort()
    this.abort = new AbortController()
    const isCurrent = () => attempt === this.attempt
    this.store.setState({ loading, problem: null })
    try {
      await work(isCurrent, this.abort.signal)
    } catch (error) {
      if (isCurrent()) this.store.setState({ problem: { message: problemOf(error, loading) } })
    } finally {
      if (isCurrent()) this.store.setState({ loading: null })
    }
  }
}

function problemOf(error: unknown, what: string): string {
  if (error instanceof FileError || error instanceof DemoError) return error.message
  const detail = error instanceof Error ? ` (${error.message})` : ''
  return `${what} could not be taken in${detail}. What was on the bench is still there; try again or choose another file.`
}
