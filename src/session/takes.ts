import type { StoreApi } from 'zustand/vanilla'
import type { Compute } from '../compute/compute'
import { FileError } from '../files/file-error'
import { isolated, shownName } from '../files/file-name'
import { DemoError, loadDemo } from './load-demo'
import { type Problem, type Replaced, type TakeState, withProblem } from './take-store'

/** What reads files is fetched when there is one to read: the page comes in sooner without it. */
const fileReading = () => import('../files/decode')

/** Files that were given together, by what they are to be. */
export interface GivenFiles {
  readonly take: File | null
  readonly backing: File | null
  /** Those there is no use for. */
  readonly unused: readonly File[]
}

/** What is being loaded when it is no file. */
const DEMO = 'the demo'

/** One thing being loaded. */
interface Attempt {
  /** The file's name as it is shown, or the demo. */
  readonly name: string
  readonly abort: AbortController
  /** What it loads is in place. */
  isIn: boolean
}

/** Brings takes and backings onto the bench. What fails is told in the store; what was there stays there. */
export class Takes {
  /** What is being loaded. A slow file cannot replace one that was chosen after it. */
  private current: Attempt | null = null

  constructor(
    private readonly store: StoreApi<TakeState>,
    private readonly worker: Pick<Compute, 'setTake'>,
    /** Told when another take or backing is in place. */
    private readonly onChange: (what: 'take' | 'backing') => void,
  ) {}

  /** Opens a take and then its backing. A backing goes only with a take that came in; what is not opened is named. */
  async openTogether({ take, backing, unused }: GivenFiles): Promise<void> {
    for (const { name } of unused) this.refuse(name, 'one take and one backing can be opened at a time.')
    const isIn = take === null || (await this.openTake(take))
    if (!backing) return
    if (isIn) await this.openBacking(backing)
    else if (take)
      this.refuse(backing.name, `loading ${labelOf(take.name)}, which it goes with, did not finish.`)
  }

  /**
   * Opens a file as the take. A backing that was opened stays if it has the same rate; the demo's goes.
   * @returns whether the take came in and nothing stopped it
   */
  openTake(file: File): Promise<boolean> {
    return this.attemptTo(file.name, async (attempt) => {
      const { decodeFile } = await fileReading()
      const { name, ...decoded } = await decodeFile(file, { signal: attempt.abort.signal })
      if (this.current !== attempt) return
      const { backing } = this.store.getState()
      const goesOn = backing?.sound.sampleRate === decoded.sound.sampleRate && !backing.ofDemo
      const take = { ...decoded, name: shownName(name), measures: null }
      attempt.isIn = true
      await this.place({ take, backing: goesOn ? backing : null }, null)
    })
  }

  /**
   * Opens a file as the backing, converted to the take's rate.
   * @returns whether the backing came in
   */
  async openBacking(file: File): Promise<boolean> {
    const { take } = this.store.getState()
    if (!take) {
      this.refuse(file.name, 'a backing needs a take. Open a take first.')
      return false
    }
    return this.attemptTo(file.name, async (attempt) => {
      const { decodeFileAtRate } = await fileReading()
      const { signal } = attempt.abort
      const { name, sound, timing } = await decodeFileAtRate(file, take.sound.sampleRate, { signal })
      if (this.current !== attempt) return
      attempt.isIn = true
      this.store.setState({ backing: { name: shownName(name), sound, timing } })
      this.onChange('backing')
    })
  }

  /** Puts the built-in demo and its backing on the bench. What somebody had opened can be brought back. */
  async openDemo(): Promise<void> {
    await this.attemptTo(DEMO, async (attempt) => {
      const { title, vocal, backing } = await loadDemo()
      if (this.current !== attempt) return
      const take = { name: title, sound: vocal, header: null, replacedSamples: 0, measures: null }
      const demo = { take, backing: { name: `${title}, backing`, sound: backing, ofDemo: true } as const }
      await this.place(demo, this.opened() ?? this.store.getState().replaced)
    })
  }

  /** Brings back what the demo took the place of. */
  async bringBack(): Promise<void> {
    const { replaced } = this.store.getState()
    if (!replaced) return
    await this.attemptTo(replaced.take.name, async (attempt) => {
      attempt.isIn = true
      await this.place(replaced, null)
    })
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

  /** Stops what is being loaded. What is open stays open. */
  cancel(): void {
    this.current?.abort.abort()
    this.current = null
    this.store.setState({ loading: null })
  }

  dismissProblem(problem: Problem): void {
    this.store.setState(({ problems }) => ({ problems: problems.filter((other) => other !== problem) }))
  }

  /** What is on the bench, if somebody opened any of it. */
  private opened(): Replaced | null {
    const { take, backing } = this.store.getState()
    const own = take && (take.header !== null || (backing && !backing.ofDemo))
    return own ? { take, backing } : null
  }

  /** Puts a take in place and has it measured; it stays in place where that fails. */
  private async place({ take, backing }: Replaced, replaced: Replaced | null): Promise<void> {
    this.store.setState({ take, backing, replaced })
    this.onChange('take')
    const isOpen = () => this.store.getState().take === take
    try {
      const measures = await this.worker.setTake(take.sound)
      if (isOpen()) this.store.setState({ take: { ...take, measures } })
    } catch (error) {
      const message = `${labelOf(take.name)} is open, but it could not be measured: ${reasonOf(error)}. You can play it; open it again to have it measured.`
      if (isOpen()) this.tell({ message, fileName: take.name })
    }
  }

  /** @returns whether `work` was done to its end: it did not fail, was not stopped, and nothing else was opened */
  private async attemptTo(fileName: string, work: (attempt: Attempt) => Promise<void>): Promise<boolean> {
    const name = shownName(fileName)
    const attempt: Attempt = { name, abort: new AbortController(), isIn: false }
    const isCurrent = () => this.current === attempt
    this.supersede(attempt)
    this.store.setState(({ problems }) => ({
      loading: name,
      problems: problems.filter((problem) => problem.fileName !== name),
    }))
    try {
      await work(attempt)
      return isCurrent()
    } catch (error) {
      if (isCurrent()) this.tell({ message: problemOf(error, name), fileName: name })
      return false
    } finally {
      if (isCurrent()) this.cancel()
    }
  }

  /** Gives up what is being loaded for `next`. */
  private supersede(next: Attempt): void {
    const last = this.current
    this.current = next
    last?.abort.abort()
    if (!last || last.isIn || last.name === DEMO || last.name === next.name) return
    this.refuse(last.name, `${labelOf(next.name)} was opened before it had loaded.`)
  }

  private refuse(fileName: string, why: string): void {
    const name = shownName(fileName)
    this.tell({ message: `${labelOf(name)} was not opened: ${why}`, fileName: name })
  }

  private tell(problem: Problem): void {
    this.store.setState(({ problems }) => ({ problems: withProblem(problems, problem) }))
  }
}

function problemOf(error: unknown, name: string): string {
  if (error instanceof FileError || error instanceof DemoError) return error.message
  return `${labelOf(name)} could not be opened: ${reasonOf(error)}. What was open still is; try again or open another file.`
}

/** A name in the middle of a sentence. */
function labelOf(name: string): string {
  return name === DEMO ? name : `“${isolated(name)}”`
}

/** What an error says, as part of a sentence. */
function reasonOf(error: unknown): string {
  const reason = error instanceof Error ? error.message : String(error)
  return reason.replace(/\.$/, '')
}
