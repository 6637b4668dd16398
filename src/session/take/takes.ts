import type { StoreApi } from 'zustand/vanilla'
import type { Compute } from '../../compute/compute'
import { shownName } from '../../files/file-name'
import { fileReading } from '../parts'
import { loadDemo } from './load-demo'
import { type LoadEnding, LoadQueue, type LoadRequest } from './load-queue'
import { DEMO, labelOf, notOpened, problemOf, reasonOf } from './opening-words'
import { loadedAs, soundRef } from './sound-ref'
import {
  type Awaited,
  type Backing,
  NOTHING_AWAITED,
  type Problem,
  type Replaced,
  type Take,
  type TakeState,
  withProblem,
} from './take-store'

/** Files that were given together, by what they are to be. */
export interface GivenFiles {
  readonly take: File | null
  readonly backing: File | null
  /** Those there is no use for. */
  readonly unused: readonly File[]
}

/**
 * How a request to open something ended: it is in place; it could not be read; something newer was asked for; the
 * take it goes with did not come in; loading was stopped; or there was no use for it.
 */
export type Opening = LoadEnding['kind'] | 'refused'

/**
 * Loads takes and backings. All requests go through one queue, and each has one answer: what was asked for is in
 * place, or the store tells why it is not (unless the user stopped it). What fails leaves everything as it was.
 */
export class Takes {
  private readonly queue: LoadQueue

  constructor(
    private readonly store: StoreApi<TakeState>,
    private readonly compute: Pick<Compute, 'setTake' | 'takeHash' | 'takeMarks'>,
    /** Told when another take or backing is in place. */
    private readonly onChange: (what: 'take' | 'backing') => void,
  ) {
    this.queue = new LoadQueue((loading) => store.setState({ loading }))
  }

  /** Opens a take and its backing. A backing goes only with a take that came in; what is not opened is named. */
  async openTogether({ take, backing, unused }: GivenFiles): Promise<readonly Opening[]> {
    const refused = unused.map(({ name }) =>
      this.refuse(name, 'one take and one backing can be opened at a time.'),
    )
    const opened = [...(take ? [this.openTake(take)] : []), ...(backing ? [this.openBacking(backing)] : [])]
    return [...refused, ...(await Promise.all(opened))]
  }

  /** Opens a file as the take. A backing that was opened stays if it has the same rate; the demo's goes. */
  openTake(file: File): Promise<Opening> {
    return this.request(file, 'take', async (signal) => {
      const { decodeFile } = await fileReading.load()
      const { name, ...decoded } = await decodeFile(file, { signal })
      return () => {
        const { backing } = this.store.getState()
        const fits = backing?.sound.sampleRate === decoded.sound.sampleRate && !backing.ofDemo
        const take = { ...decoded, name: shownName(name), measures: null }
        this.place({ take, backing: fits ? backing : null }, null)
      }
    })
  }

  /** Opens a file as the backing of the take that is in place or being loaded, converted to its rate. */
  async openBacking(file: File): Promise<Opening> {
    const { take, loading } = this.store.getState()
    if (!take && loading === null) return this.refuse(file.name, 'a backing needs a take. Open a take first.')
    return this.request(file, 'backing', async (signal) => {
      const { take } = this.store.getState()
      const { decodeFileAtRate } = await fileReading.load()
      const decoded = await decodeFileAtRate(file, take?.sound.sampleRate ?? 0, { signal })
      const { name, sound, timing } = decoded
      return () => {
        this.setBacking({ name: shownName(name), sound, timing })
      }
    })
  }

  /** Puts the built-in demo and its backing in place. What somebody had opened can be brought back. */
  openDemo(): Promise<Opening> {
    return this.request(DEMO, 'take', async () => {
      const { title, vocal, backing } = await loadDemo()
      const take = { name: title, sound: vocal, header: null, replacedSamples: 0, measures: null }
      const demo = { take, backing: { name: `${title}, backing`, sound: backing, ofDemo: true } as const }
      return () => this.place(demo, this.opened() ?? this.store.getState().replaced)
    })
  }

  /** Brings back what the demo replaced. */
  async bringBack(): Promise<void> {
    const { replaced } = this.store.getState()
    if (!replaced) return
    this.queue.supersedeAll({ words: `${labelOf(replaced.take.name)} was brought back`, file: null })
    this.place(replaced, null)
  }

  /** Lets go of what the demo replaced. */
  forgetReplaced(): void {
    this.store.setState({ replaced: null })
  }

  /** Removes the backing, and the one that is being loaded for the same take. */
  removeBacking(): void {
    this.queue.supersedeBacking({ words: 'the backing was removed', file: null })
    this.setBacking(null)
  }

  /**
   * Puts in place what a session document refers to: sounds that are given, else those that are loaded already. The
   * others are awaited.
   */
  restore(refs: Awaited, given: { readonly take: Take | null; readonly backing: Backing | null }): void {
    this.queue.supersedeAll({ words: 'another session was opened', file: null })
    const now = this.store.getState()
    const take = given.take ?? loadedAs(refs.take, now.take)
    const fits = now.backing?.sound.sampleRate === take?.sound.sampleRate
    const backing = take && (given.backing ?? (fits ? loadedAs(refs.backing, now.backing) : null))
    const awaited = {
      take: take ? null : refs.take && soundRef(refs.take),
      backing: backing ? null : refs.backing && soundRef(refs.backing),
    }
    this.store.setState({ take, backing, awaited, replaced: null })
    if (take !== now.take) this.onChange('take')
    else if (backing !== now.backing) this.onChange('backing')
    if (take && !take.measures && take !== now.take) void this.measure(take)
  }

  /** Stops loading. What is open stays open. */
  cancel(): void {
    this.queue.stop()
  }

  dismissProblem(problem: Problem): void {
    this.store.setState(({ problems }) => ({ problems: problems.filter((other) => other !== problem) }))
  }

  /** What is in place, if somebody opened any of it. */
  private opened(): Replaced | null {
    const { take, backing } = this.store.getState()
    const own = take && (take.header !== null || (backing && !backing.ofDemo))
    return own ? { take, backing } : null
  }

  private setBacking(backing: Backing | null): void {
    this.store.setState(({ awaited }) => ({ backing, awaited: { ...awaited, backing: null } }))
    this.onChange('backing')
  }

  /** Puts a take in place, and has it measured meanwhile. */
  private place({ take, backing }: Replaced, replaced: Replaced | null): void {
    this.store.setState({ take, backing, replaced, awaited: NOTHING_AWAITED })
    this.onChange('take')
    void this.measure(take)
  }

  /** A take stays in place where measuring fails. */
  private async measure(take: Take): Promise<void> {
    const isOpen = () => this.store.getState().take === take
    try {
      const measures = await this.compute.setTake(take.sound)
      const { takeHash: hash, takeMarks: marks } = this.compute
      if (isOpen()) this.store.setState({ take: { ...take, measures, hash, marks } })
    } catch (error) {
      const message = `${labelOf(take.name)} is open, but it could not be measured: ${reasonOf(error)}. You can play it; open it again to have it measured.`
      if (isOpen()) this.tell({ message, fileName: take.name })
    }
  }

  /** Queues a request, and tells how it ended where that is not seen anyway. */
  private async request(
    what: File | typeof DEMO,
    slot: LoadRequest['slot'],
    load: LoadRequest['load'],
  ): Promise<Opening> {
    const file = what === DEMO ? null : what
    const name = file ? shownName(file.name) : DEMO
    const superseding = { words: `${labelOf(name)} was opened`, file }
    // Asked for again: what was told about it is over.
    this.store.setState(({ problems }) => ({
      problems: problems.filter(({ fileName }) => fileName !== name),
    }))
    const ending = await this.queue.add({ slot, name, superseding, load })
    const problem = problemOf(ending, file, name)
    if (problem !== null) this.tell({ message: problem, fileName: name })
    return ending.kind
  }

  private refuse(fileName: string, why: string): 'refused' {
    const name = shownName(fileName)
    this.tell({ message: notOpened(name, why), fileName: name })
    return 'refused'
  }

  private tell(problem: Problem): void {
    this.store.setState(({ problems }) => ({ problems: withProblem(problems, problem) }))
  }
}
