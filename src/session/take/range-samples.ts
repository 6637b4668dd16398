import { MOST_SAMPLES, type RangeSamples } from '../../compute/jobs/samples-job'
import { type FrameRange, frameCount, type Sound, type StageDoc } from '../../core'
import type { App } from '../app'

export type { RangeSamples } from '../../compute/jobs/samples-job'

/** Whole frames around what is seen, as many on either side again where that is not too long, so that it can be moved. */
export function rangeAround({ from, to }: FrameRange, frames: number): FrameRange {
  const air = Math.max(0, Math.min(to - from, (MOST_SAMPLES - (to - from)) / 2 - 1))
  return { from: Math.max(0, Math.floor(from - air)), to: Math.min(frames, Math.ceil(to + air)) }
}

/** Whether all of a range of a take of so many frames is there. */
export function covers(samples: RangeSamples, { from, to }: FrameRange, frames: number): boolean {
  const length = samples.channels[0]?.length ?? 0
  return (
    samples.from <= Math.max(0, Math.floor(from)) && samples.from + length >= Math.min(frames, Math.ceil(to))
  )
}

/** Samples of the take itself, which is here. */
export function takeSamples(sound: Sound): RangeSamples {
  return { from: 0, channels: sound.channels }
}

/**
 * Samples behind stages, around what is seen of a take; null where they were given up.
 * @throws ComputeError when they could not be worked out
 */
export function samplesAround(
  { compute }: Pick<App, 'compute'>,
  stages: readonly StageDoc[],
  seen: FrameRange,
  sound: Sound,
  signal: AbortSignal,
): Promise<RangeSamples | null> {
  const range = rangeAround(seen, frameCount(sound))
  return compute.run('samples', (take) => ({ take, stages, range }), { priority: 'evidence', signal })
}
