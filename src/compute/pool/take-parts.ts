import { soundParts } from '../../core'
import type { HashedTake } from '../address'
import type { ToWorker } from '../messages'

/** Copies of a take, part by part: their memory may be moved. At least one. */
export function* takeParts(
  { hash, sound }: HashedTake,
  partFrames?: number,
): Generator<Extract<ToWorker, { readonly type: 'take-part' }>, void, void> {
  for (const part of soundParts(sound, partFrames)) yield { type: 'take-part', hash, ...part }
}
