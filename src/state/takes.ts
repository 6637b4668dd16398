import type { StoreApi } from 'zustand/vanilla'
import { decodeFile, decodeFileAtRate } from '../audio/files/decode'
import { FileError } from '../audio/files/file-error'
import type { BenchWorker } from '../audio/worker/bench-worker'
import { loadDemo } from './load-demo'
import type { Take, TakeState } from './take-store'

/** Brings takes and backings onto the bench. What fails is told in the store; what was there stays there. */
export class Takes {
  /** Counts attempts, so that a slow file cannot replace one that was chosen after it. */
  private attempt = 0

  constructor(
    private readonly store: StoreApi<TakeState>,
    private readonly worker: BenchWorker,
    /** Told when another take or backing is in place. */
    private readonly onChange: (what: 'take' | 'backing') => void,
  ) {}

  /** Takes in a file as the take. The backing stays if it has the same rate, else it is taken off. */
  async openTake(file: File): Promise<void> {
    await this.attemptTo(file.name, async (isCurrent) => {
      const { name, sound, header, replacedSamples } = await decodeFile(file)
      if (isCurrent()) await this.place({ name, sound, header, replacedSamples, measures: null })
    })
  }

  /** Takes in a file as the backing, brought to the take's rate. */
  async openBacking(file: File): Promise<void> {
    const { take } = this.store.getState()
    if (!take) return
    await this.attemptTo(file.name, async (isCurrent) => {
      const { name, sound } = await decodeFileAtRate(file, take.sound.sampleRate)
      if (!isCurrent()) return
      this.store.setState({ backing: { name, sound } })
      this.onChange('backing')
    })
  }

  /** Puts the built-in demo and its backing on the bench. */
  async openDemo(): Promise<void> {
    await this.attemptTo('the demo', async (isCurrent) => {
      const { title, vocal, backing } = await loadDemo()
      if (!isCurrent()) return
      this.store.setState({ backing: { name: `${title}, backing`, sound: backing } })
      await this.place({ name: title, sound: vocal, header: null, replacedSamples: 0, measures: null })
    })
  }

  /** Takes the backing off the bench. */
  removeBacking(): void {
    this.store.setState({ backing: null })
    this.onChange('backing')
  }

  dismissProblem(): void {
    this.store.setState({ problem: null })
  }

  private async place(take: Take): Promise<void> {
    const { backing } = this.store.getState()
    const sameRate = backing?.sound.sampleRate === take.sound.sampleRate
    this.store.setState({ take, backing: sameRate ? backing : null })
    this.onChange('take')
    const measures = await this.worker.setTake(take.sound)
    if (this.store.getState().take === take) this.store.setState({ take: { ...take, measures } })
  }

  private async attemptTo(loading: string, work: (isCurrent: () => boolean) => Promise<void>): Promise<void> {
    const attempt = ++this.attempt
    const isCurrent = () => attempt === this.attempt
    this.store.setState({ loading, problem: null })
    try {
      await work(isCurrent)
    } catch (error) {
      if (isCurrent()) this.store.setState({ problem: { message: problemOf(error, loading) } })
    } finally {
      if (isCurrent()) this.store.setState({ loading: null })
    }
  }
}

function problemOf(error: unknown, what: string): string {
  if (error instanceof FileError) return error.message
  const detail = error instanceof Error ? ` (${error.message})` : ''
  return `${what} could not be taken in${detail}. What was on the bench is still there; try again or choose another file.`
}
