import type { FrameRange } from '../../../core'
import type { Take } from '../../../session/take/take-store'

export type MarkKind = 'sibilant' | 'clipped' | 'loop-start' | 'loop-end'

/** A place of the take that is marked and can be gone to. */
export interface Mark {
  readonly kind: MarkKind
  /** Where it begins. */
  readonly frame: number
}

/** All marks of a take, from its start on. */
export function marksOf(
  { sound, marks }: Pick<Take, 'sound' | 'marks'>,
  loop: FrameRange | null,
): readonly Mark[] {
  const mark =
    (kind: MarkKind) =>
    (frame: number): Mark => ({ kind, frame })
  const sibilants = marks?.sibilants.map(({ startSeconds }) => Math.round(startSeconds * sound.sampleRate))
  return [
    ...(sibilants ?? []).map(mark('sibilant')),
    ...(marks?.clipped ?? []).map(({ from }) => from).map(mark('clipped')),
    ...(loop ? [mark('loop-start')(loop.from), mark('loop-end')(loop.to)] : []),
  ].sort((a, b) => a.frame - b.frame)
}
