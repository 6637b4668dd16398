import type { SoundWithLeads } from '../../core'
import type { HashedTake } from '../address'
import { ByteCache } from '../byte-cache'
import { FactStore } from '../facts/fact-store'
import type { LaneMemory } from '../lanes/lane-ground'

/**
 * Sounds behind stages that a worker keeps, bytes: every stage of a short take, of four minutes of mono the one that is
 * asked for again, of longer takes none. More would not keep memory below five times the take.
 */
const SOUND_BYTES = 48 * 2 ** 20
const FACT_BYTES = 16 * 2 ** 20

/**
 * Memory that stages were run on, up to so many bytes, is left for the next job: to be given new memory takes ten times as
 * long as to copy a take. Of longer takes it would keep one copy more for good.
 */
const WORKING_BYTES = 64 * 2 ** 20

/** With room for this many of its sounds, a take's are all kept; with less, only those that are asked to be. */
const ROOMY_SOUNDS = 4

/** What a sound holds around the take, at most, bytes. */
const LEADS_BYTES = 2 ** 18

/** What a worker holds from job to job. */
export class WorkerMemory {
  take: HashedTake | null = null
  readonly sounds: ByteCache<SoundWithLeads>
  readonly facts: FactStore
  readonly lanes: LaneMemory = { excerpt: null, ground: null }
  private working: readonly Float32Array[] | null = null

  constructor(
    private readonly soundBytes = SOUND_BYTES,
    factBytes = FACT_BYTES,
  ) {
    this.sounds = new ByteCache(soundBytes)
    this.facts = new FactStore(factBytes)
  }

  /** Puts a take in place of the one before, or none. */
  adopt(take: HashedTake | null): void {
    this.take = take
    this.sounds.clear()
    this.facts.clear()
    this.working = null
    this.lanes.excerpt = null
    this.lanes.ground = null
  }

  /** Whether every sound of the take is kept. */
  get isRoomy(): boolean {
    return this.take !== null && this.isPlenty(bytesOf(this.take.sound.channels))
  }

  /** Whether one more sound of the take would push none out. */
  get hasFreeRoom(): boolean {
    return (
      this.take !== null &&
      this.sounds.bytes + bytesOf(this.take.sound.channels) + LEADS_BYTES <= this.soundBytes
    )
  }

  /** Keeps a sound where there is room. @returns whether it is kept now, so that its memory must stay as it is */
  keep(key: string, sound: SoundWithLeads, isAskedFor: boolean): boolean {
    const bytes = bytesOf(sound.channels)
    if (isAskedFor || this.isPlenty(bytes)) this.sounds.put(key, sound, bytes)
    return this.sounds.has(key)
  }

  /** Memory to run stages on, as it was left; whoever takes it has it alone. Null where new memory is needed. */
  takeWorking(channelCount: number, frames: number): readonly Float32Array[] | null {
    const { working } = this
    this.working = null
    return working?.length === channelCount && working.every(({ length }) => length >= frames)
      ? working
      : null
  }

  /** Leaves memory that nobody reads any more, where it is not too much. */
  leaveWorking(channels: readonly Float32Array[]): void {
    const whole = channels.map(({ buffer }) => new Float32Array(buffer))
    if (bytesOf(whole) <= WORKING_BYTES) this.working = whole
  }

  private isPlenty(bytes: number): boolean {
    return bytes * ROOMY_SOUNDS <= this.soundBytes
  }
}

function bytesOf(channels: readonly Float32Array[]): number {
  return channels.reduce((sum, samples) => sum + samples.byteLength, 0)
}
