import {
  alignedSound,
  chainLatencyFrames,
  excerpt,
  type FrameRange,
  frameCount,
  partOf,
  runStage,
  type Sound,
  type SoundWithLeads,
  type StageDoc,
  type Steps,
  soundBehindSteps,
  workingCopySteps,
} from '../../core'
import { type SoundAddress, soundKey, stagesOn } from '../address'
import type { FactName, FactValues } from '../facts/fact-values'
import { facts } from '../facts/facts'
import type { JobTools, PlacedSound } from '../jobs/job'
import type { WorkerMemory } from './worker-memory'

/** Sound behind the end of a take that is worked out beyond what is asked for, frames: what more stages may delay. */
const RUN_OUT_FRAMES = 8192

/**
 * A part of a sound is rendered from so far ahead: ten of the longest time constants, of which nothing is left then, or
 * two of them after one another and five of each. Behind it lies what stages may look ahead into or delay. Seconds.
 */
const SETTLING_SECONDS = 20
const RUN_OUT_SECONDS = 0.2

/** A sound in memory. */
interface Held {
  readonly key: string
  readonly sound: SoundWithLeads
  /** Of its last stage; undefined where this was not worked out along with the sound. */
  readonly trace: FactValues['trace'] | undefined
  /** It is kept for other jobs too: stages may not be run on its memory. */
  readonly isShared: boolean
}

/** How the ends of a job are told. */
export interface JobEnds<Piece> {
  tell(piece: Piece): void
  isWanted(): boolean
}

/** What one job works with, in the memory of its worker. */
export class WorkerTools<Piece> implements JobTools<Piece> {
  readonly take: Sound
  readonly tell: (piece: Piece) => void
  readonly isWanted: () => boolean
  private readonly asked = new Set<string>()
  private held: Held | null = null
  /** Memory that stages are run on, and nobody else reads. */
  private working: readonly Float32Array[] | null = null

  constructor(
    private readonly memory: WorkerMemory,
    take: Sound,
    { tell, isWanted }: JobEnds<Piece>,
  ) {
    this.take = take
    this.tell = tell
    this.isWanted = isWanted
  }

  get lanes() {
    return this.memory.lanes
  }

  learn<Name extends FactName>(address: SoundAddress, name: Name, value: FactValues[Name]): void {
    this.memory.facts.put(address, name, value)
  }

  /** Leaves the memory that stages were run on to the next job. Sounds that were asked for are gone with it. */
  leaveMemory(): void {
    this.held = null
    if (this.working) this.memory.leaveWorking(this.working)
    this.working = null
  }

  keep(address: SoundAddress): void {
    this.asked.add(soundKey(address))
  }

  *sound(address: SoundAddress): Steps<Sound> {
    const sound = alignedSound(yield* this.soundWithLeads(address))
    const { range } = address
    return range ? excerpt(sound, range.from, range.to) : sound
  }

  *soundNear(address: SoundAddress, range: FrameRange): Steps<PlacedSound> {
    const { take, memory } = this
    const from = Math.max(0, Math.floor(range.from - SETTLING_SECONDS * take.sampleRate))
    const to = Math.min(frameCount(take), Math.ceil(range.to + RUN_OUT_SECONDS * take.sampleRate))
    const isThere = stagesOn(address.stages).length === 0 || this.inMemory(soundKey(address), 0) !== null
    if (isThere || memory.isRoomy || 2 * (to - from) > frameCount(take)) {
      // Nothing that edits will begin from gives way to it.
      if (memory.hasFreeRoom) this.keep(address)
      return { from: 0, sound: yield* this.sound(address) }
    }
    const behind = yield* soundBehindSteps(excerpt(take, from, to), address.stages)
    return { from, sound: alignedSound(behind) }
  }

  *fact<Name extends FactName>(address: SoundAddress, name: Name): Steps<FactValues[Name]> {
    const known = this.memory.facts.get(address, name)
    if (known !== undefined) return known
    const value = yield* facts[name](address, this)
    this.memory.facts.put(address, name, value)
    return value
  }

  *trace(address: SoundAddress): Steps<FactValues['trace']> {
    if (stagesOn(address.stages).length === 0) return null
    yield* this.soundWithLeads(address)
    const found = this.heldTrace() ?? this.memory.facts.get(address, 'trace')
    if (found !== undefined) return found
    // The sound was kept longer than its trace: the last stage is run once more.
    this.memory.sounds.delete(soundKey(address))
    this.held = null
    yield* this.soundWithLeads(address)
    return this.heldTrace() ?? null
  }

  *soundWithLeads({ take, stages }: SoundAddress): Steps<SoundWithLeads> {
    const { sampleRate } = this.take
    const on = stagesOn(stages)
    const keys = [...on, null].map((_, count) => soundKey({ take, stages: on.slice(0, count) }))
    const needed = (from: number) => chainLatencyFrames({ stages: on.slice(from) }, sampleRate)
    let count = on.length
    let held = this.inMemory(keys[count] ?? '', 0)
    while (!held && count > 0) {
      count--
      held = this.inMemory(keys[count] ?? '', needed(count))
    }
    held ??= { key: keys[0] ?? '', sound: this.take, trace: null, isShared: true }
    const first = count
    for (const stage of on.slice(first)) {
      const share = (done: number) => (done - first) / (on.length - first)
      const steps = this.runBehind(held, stage, needed(count), keys[count + 1] ?? '')
      held = yield* partOf(steps, share(count), share(count + 1))
      count++
      this.memory.facts.put({ take, stages: on.slice(0, count) }, 'trace', held.trace ?? null)
    }
    this.held = held
    return held.sound
  }

  private heldTrace(): Held['trace'] {
    return this.held?.trace
  }

  private *runBehind(before: Held, stage: StageDoc, needed: number, key: string): Steps<Held> {
    // Silence is what lies behind a take, and not what lies behind a sound that was made from it.
    const runOut = before.sound === this.take ? needed + RUN_OUT_FRAMES : 0
    const working = before.isShared ? yield* this.workingCopy(before.sound, runOut) : before.sound
    // From here on that memory holds another sound, and while the stage runs none.
    this.held = null
    const { sound, trace } = yield* runStage(working, stage)
    const isShared = this.memory.keep(key, sound, this.asked.has(key))
    if (isShared) this.working = null
    return { key, sound, trace, isShared }
  }

  private *workingCopy(sound: SoundWithLeads, runOutFrames: number): Steps<SoundWithLeads> {
    // What was worked out before in that memory is not read again.
    this.leaveMemory()
    const copy = yield* workingCopySteps(sound, runOutFrames, (channelCount, frames) =>
      this.memory.takeWorking(channelCount, frames),
    )
    this.working = copy.channels
    return copy
  }

  /** A sound with at least so many frames behind the take. */
  private inMemory(key: string, leadOutFrames: number): Held | null {
    const { held } = this
    if (held?.key === key && (held.sound.leadOutFrames ?? 0) >= leadOutFrames) return held
    const kept = this.memory.sounds.get(key)
    if (!kept || (kept.leadOutFrames ?? 0) < leadOutFrames) return null
    return { key, sound: kept, trace: undefined, isShared: true }
  }
}
