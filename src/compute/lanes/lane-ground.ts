import { type FrameRange, type SoundWithLeads, type StageDoc, type Steps, soundBehindSteps } from '../../core'
import { soundKey } from '../address'
import { Rounds } from './rounds'
import type { TakeExcerpt } from './take-excerpt'

/** A piece, frames: what is newer than a request waits for the end of one, and warms up anew. */
export const PIECE_FRAMES = 2 ** 17

/** What lanes are traced on, again and again, while a hand moves a setting: the sound before the first stage that changes. */
export interface LaneGround {
  readonly key: string
  readonly sound: SoundWithLeads
  readonly firstHop: number
  readonly stretch: FrameRange
  readonly rounds: Rounds
}

/** What is kept of lanes from one request to the next. */
export interface LaneMemory {
  excerpt: TakeExcerpt | null
  ground: LaneGround | null
}

/** Names the ground behind `prefix` in an excerpt. */
export function groundKey(excerptKey: string, prefix: readonly StageDoc[]): string {
  return soundKey({ take: excerptKey, stages: prefix })
}

/** Runs the excerpt through the stages ahead of the first that changes. */
export function* laneGround(excerpt: TakeExcerpt, prefix: readonly StageDoc[]): Steps<LaneGround> {
  const { key, firstHop, stretch } = excerpt
  const sound = yield* soundBehindSteps(excerpt.sound, prefix)
  return { key: groundKey(key, prefix), sound, firstHop, stretch, rounds: new Rounds(PIECE_FRAMES) }
}
