import {
  type ChainDoc,
  type Comparison,
  type FrameRange,
  type Measures,
  type Sound,
  sampleHashSteps,
} from '../core'
import type { HashedTake } from './address'
import { ByteCache } from './byte-cache'
import type { Evidence, LoopEvidence, TakeMarks } from './evidence'
import type { EvidenceListener, EvidenceWanted } from './evidence-wanted'
import { FactStore } from './facts/fact-store'
import { addressOf, type Want } from './facts/fact-values'
import type { JobInput, JobName, JobResult } from './jobs'
import { type FactPiece, knownFact } from './jobs/facts-job'
import { HandLanes } from './pool/hand-lanes'
import { Pool, type RunOptions } from './pool/pool'
import { inSlices } from './port/next-task'
import { orAborted, pause } from './port/waits'
import { alikePrefix, EvidenceSelector, lotsOf, missingFrom, wantsOf } from './select/select-evidence'
import { loopWantsOf, selectLoop } from './select/select-loop'
import { startWorker } from './start-worker'
import type { Study, WantOptions } from './want-options'

/** Facts that the page keeps, bytes: those of some dozens of comparisons of a four-minute take. */
const FACT_BYTES = 64 * 2 ** 20

/** Tiles of spectrograms that the page keeps, bytes: some three hundred. */
const TILE_BYTES = 16 * 2 ** 20

/** The hand rests when nothing new has been asked for this long, ms: several moves of a mouse. */
const REST_MS = 60
/** A loop is moved and comes to rest again; facts about it wait that long, ms. */
const LOOP_REST_MS = 120

/** Where the take is measured for what is not everywhere. */
const PLACES: Want = { stages: [], names: ['places'] }

/** Everything that is worked out off the page, about one take at a time. */
export class Compute {
  /** Tiles of spectrograms that are known; see `SpectrogramTiles`. */
  readonly tiles = new ByteCache<Uint8Array>(TILE_BYTES)
  private readonly facts = new FactStore(FACT_BYTES)
  private readonly selector = new EvidenceSelector(this.facts)
  private readonly lanes: HandLanes
  private take: HashedTake | null = null
  private takeAbort = new AbortController()
  private evidenceAbort = new AbortController()
  private loopAbort = new AbortController()
  private studyAbort = new AbortController()
  /** Ends the wait for the hand to rest. */
  private endWait: () => void = () => undefined
  /** The chain whose evidence was put together last: what is alike in the next will be alike in the one after. */
  private shown: ChainDoc | null = null

  constructor(private readonly pool = new Pool(startWorker, navigator.hardwareConcurrency)) {
    this.lanes = new HandLanes(pool)
  }

  /** Hash of the take that everything is about; null before there is one. */
  get takeHash(): string | null {
    return this.take?.hash ?? null
  }

  /** Where the take is to be looked at, known once it is measured. */
  get takeMarks(): TakeMarks | null {
    const address = this.take && { take: this.take.hash, stages: [] }
    const sibilants = address && this.facts.get(address, 'places')?.sibilants
    const clipped = address && this.facts.get(address, 'clipped')
    return sibilants && clipped ? { sibilants, clipped } : null
  }

  /**
   * Puts a take in the place of the one before, and measures it. Null when another took its place.
   * @throws ComputeError when it could not be measured
   */
  async setTake(sound: Sound): Promise<Measures | null> {
    this.takeAbort.abort()
    this.evidenceAbort.abort()
    this.loopAbort.abort()
    this.studyAbort.abort()
    this.lanes.leave()
    const abort = new AbortController()
    this.takeAbort = abort
    this.take = null
    this.shown = null
    this.tiles.clear()
    this.pool.forgetTake()
    const hash = await inSlices(sampleHashSteps(sound), () => !abort.signal.aborted)
    if (hash === null || abort.signal.aborted) return null
    this.take = { hash, sound }
    const wants = [{ stages: [], names: ['places', 'measures', 'clipped'] }] as const
    const isKnown = await this.want(this.take, wants, abort)
    return isKnown ? (this.facts.get({ take: hash, stages: [] }, 'measures') ?? null) : null
  }

  /**
   * Evidence of a comparison, at once where its facts are known; null when a newer request took its place.
   * @throws ComputeError when it could not be worked out
   */
  async evidence(
    { comparison, loop, live }: EvidenceWanted,
    { onProgress, onLiveTraces, onTracesOver }: EvidenceListener,
  ): Promise<Evidence | null> {
    this.evidenceAbort.abort()
    this.loopAbort.abort()
    const abort = new AbortController()
    this.evidenceAbort = abort
    const { take } = this
    if (!take) return null
    const { bypassed, processed } = comparison
    const known = this.selector.select(take, comparison, loop)
    const keep = alikePrefix(processed, this.shown)
    if (known) {
      this.lanes.leave()
      this.shown = processed
      return known
    }
    if (live) {
      const rested = new Promise<void>((resolve) => {
        this.endWait = resolve
      })
      const stages = processed.stages.slice(keep.length)
      const traced = this.lanes.trace({ take, prefix: keep, stages, stretch: live }, onLiveTraces)
      await orAborted(Promise.race([traced, rested]), abort.signal)
      onTracesOver()
      await orAborted(Promise.race([pause(REST_MS), rested]), abort.signal)
    } else onTracesOver()
    if (abort.signal.aborted) return null
    const wants = [wantsOf(processed, true), wantsOf(bypassed, false)]
    this.facts.pin(
      wants
        .flat()
        .flatMap(({ stages, names }) => names.map((name) => [{ take: take.hash, stages }, name] as const)),
    )
    const lots = lotsOf(
      wants.map((side) => missingFrom(this.facts, take.hash, side)),
      this.pool.sharesOut(take),
    )
    const shares = lots.map(() => 0)
    const onShare = (lot: number) => (share: number) => {
      shares[lot] = share
      onProgress(Math.min(...shares))
    }
    const { signal } = abort
    await Promise.all(lots.map((lot, k) => this.workOut(take, lot, { signal, onProgress: onShare(k), keep })))
    if (signal.aborted) return null
    const evidence = this.selector.select(take, comparison, loop)
    if (evidence) this.shown = processed
    return evidence
  }

  /**
   * The same over a loop, worked out behind everything else, so that nothing waits for it; null when newer evidence or
   * another loop was asked for.
   * @param range in whole frames of the take
   * @throws ComputeError when it could not be worked out
   */
  async loopEvidence(comparison: Comparison, range: FrameRange): Promise<LoopEvidence | null> {
    this.loopAbort.abort()
    const abort = new AbortController()
    this.loopAbort = abort
    const { take } = this
    if (!take) return null
    const known = selectLoop(this.facts, take.hash, comparison, range)
    if (known) return known
    await orAborted(pause(LOOP_REST_MS), abort.signal)
    if (abort.signal.aborted) return null
    const wants = loopWantsOf(comparison, range)
    const isKnown = await this.want(take, wants, { signal: abort.signal, priority: 'study' })
    return isKnown ? selectLoop(this.facts, take.hash, comparison, range) : null
  }

  /** The hand rests, and is known to: what waits for that is worked out at once. */
  handRests(): void {
    this.endWait()
  }

  /**
   * Has any job about the take done; null where it was given up, or there is no take.
   * @throws ComputeError when it could not be done
   */
  async run<Name extends JobName>(
    kind: Name,
    inputOf: (take: string) => JobInput<Name>,
    options: Omit<RunOptions<Name>, 'take'>,
  ): Promise<JobResult<Name> | null> {
    const { take } = this
    return take && this.pool.run(kind, inputOf(take.hash), { ...options, take }).result
  }

  /**
   * The take run through `chain`, for delivery; null when `signal` gave it up.
   * @throws ComputeError when it could not be rendered
   */
  async render(
    chain: ChainDoc,
    onProgress: (share: number) => void,
    signal: AbortSignal,
  ): Promise<Sound | null> {
    return this.run('delivery', () => ({ chain }), { priority: 'screen', signal, onProgress })
  }

  /**
   * What the take run through `chain` measures, at once where that is known; null when `signal` gave it up.
   * @throws ComputeError when it could not be worked out
   */
  async measures({ stages }: ChainDoc, signal: AbortSignal): Promise<Measures | null> {
    const { take } = this
    if (!take) return null
    const isKnown = await this.want(take, [{ stages, names: ['measures'] }], { signal })
    return isKnown ? (this.facts.get({ take: take.hash, stages }, 'measures') ?? null) : null
  }

  /**
   * How many samples of the take run through `chain` do not fit integers of `bits` bits; null when `signal` gave it up.
   * @throws ComputeError when it could not be worked out
   */
  async samplesOver(chain: ChainDoc, bits: number, signal: AbortSignal): Promise<number | null> {
    return this.run('samplesOver', (take) => ({ take, chain, bits }), { priority: 'screen', signal })
  }

  /**
   * Makeup gain with which a stage is as loud as its input; null where that cannot be measured.
   * @throws ComputeError when the chain has no such stage with makeup gain
   */
  async makeup(chain: ChainDoc, stageId: string): Promise<number | null> {
    const { signal } = this.takeAbort
    return this.run('makeup', (take) => ({ take, chain, stageId }), { priority: 'screen', signal })
  }

  /** What `select` finds among the facts that are known; undefined before there is a take. */
  among<Found>(select: (facts: FactStore, take: string) => Found): Found | undefined {
    return this.take ? select(this.facts, this.take.hash) : undefined
  }

  /**
   * Has facts worked out after all that is more urgent; those asked for before in this way are given up.
   * @returns whether all of them are known
   * @throws ComputeError when they could not be worked out
   */
  async study({ wants, helps }: Study): Promise<boolean> {
    this.studyAbort.abort()
    const abort = new AbortController()
    this.studyAbort = abort
    return (
      this.take !== null && this.want(this.take, wants, { signal: abort.signal, priority: 'study', helps })
    )
  }

  /** Has what is missing worked out. @returns whether all is known; false where it was given up */
  private async want(take: HashedTake, wants: readonly Want[], options: WantOptions): Promise<boolean> {
    const missing = missingFrom(this.facts, take.hash, wants)
    if (missing.length === 0) options.onProgress?.(1)
    else await this.workOut(take, missing, options)
    return !options.signal.aborted
  }

  /** Has facts that are not known worked out, or gives them up. */
  private async workOut(
    take: HashedTake,
    missing: readonly Want[],
    { signal, onProgress = () => undefined, keep = [], priority = 'evidence', helps = [] }: WantOptions,
  ): Promise<void> {
    const known = [PLACES, ...helps].flatMap(({ stages, names }) =>
      names.flatMap((name) => knownFact(stages, name, this.facts.get({ take: take.hash, stages }, name))),
    )
    const onPiece = (piece: FactPiece) => this.learn(take.hash, missing, piece)
    const input = { take: take.hash, wants: missing, known, keep: keep.length > 0 ? keep : null }
    const { result } = this.pool.run('facts', input, { priority, take, signal, onProgress, onPiece })
    await result
  }

  private learn(take: string, wants: readonly Want[], { want, name, value }: FactPiece): void {
    const wanted = wants[want]
    if (wanted) this.facts.put(addressOf(take, wanted), name, value)
  }
}
