import type { FrameRange, Sound, SoundWithLeads, Steps } from '../../core'
import type { SoundAddress } from '../address'
import type { FactName, FactValues } from '../facts/fact-values'
import type { FactTools } from '../facts/facts'
import type { LaneMemory } from '../lanes/lane-ground'

/** A sound, or a part of it. */
export interface PlacedSound {
  readonly sound: Sound
  /** Frame of the take that it begins with. */
  readonly from: number
}

/** What a job works with. */
export interface JobTools<Piece> extends FactTools {
  /**
   * The sound with what its stages put out around the take. The next sound that is asked for may be worked out in the
   * same memory: use it before that.
   */
  soundWithLeads(address: SoundAddress): Steps<SoundWithLeads>
  /**
   * The sound over `range` at least, as far as the take reaches. Where it is not in memory and a take is long, only a
   * part of it is rendered, from so far ahead that detectors and filters have settled.
   */
  soundNear(address: SoundAddress, range: FrameRange): Steps<PlacedSound>
  /** Takes in a fact that others have worked out. */
  learn<Name extends FactName>(address: SoundAddress, name: Name, value: FactValues[Name]): void
  /** Keeps this sound for later jobs, once it is worked out, also where there is room for one only. */
  keep(address: SoundAddress): void
  /** What lanes that follow a hand are traced on, kept from job to job. */
  readonly lanes: LaneMemory
  /** Sends a part of the result ahead; its arrays are copied. */
  tell(piece: Piece): void
  /** False once the job has been asked to end at its next good place. */
  isWanted(): boolean
}

/**
 * A kind of job. A step is at most a few milliseconds' work: between any two the job can be left, and others go on.
 * What it returns is moved to whoever asked: its memory is gone here.
 */
export type Job<Input, Result, Piece = never> = (input: Input, tools: JobTools<Piece>) => Steps<Result>
