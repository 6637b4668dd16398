import type { FrameRange } from '../../sound/frame-range'
import { frameCount, type Sound } from '../../sound/sound'
import { finished, STEP_FRAMES, type Steps } from '../../sound/steps'
import { ClippedRuns } from './clipped-runs'

/** Clipped runs no further apart than this are one place: a loud note is cut off at each of its periods. */
const JOINED_SECONDS = 0.05
/** Of more places than these neighbours are joined, so that the list stays short and still covers them all. */
const MOST_RANGES = 1000

/**
 * Where a sound is clipped, in any of its channels, in order: from the first to behind the last sample of each place (see
 * {@link ClippedRuns}). At most 1000.
 */
export function clippedRanges(sound: Sound): readonly FrameRange[] {
  return finished(clippedRangeSteps(sound))
}

/** {@link clippedRanges} in steps. */
export function* clippedRangeSteps(sound: Sound): Steps<readonly FrameRange[]> {
  const { sampleRate, channels } = sound
  const frames = frameCount(sound)
  const gapFrames = Math.round(JOINED_SECONDS * sampleRate)
  const found: FrameRange[] = []
  for (const [c, samples] of channels.entries()) {
    const ofChannel: FrameRange[] = []
    const runs = new ClippedRuns((from, to) => join(ofChannel, { from, to }, gapFrames))
    for (let from = 0; from < frames; from += STEP_FRAMES) {
      const to = Math.min(frames, from + STEP_FRAMES)
      runs.add(samples, from, to)
      yield (c + to / frames) / channels.length
    }
    runs.end(frames)
    found.push(...ofChannel)
  }
  const ranges: FrameRange[] = []
  for (const range of found.sort((a, b) => a.from - b.from)) join(ranges, range, gapFrames)
  return bounded(ranges)
}

/** Adds a range to those before it; near ones become one. */
function join(ranges: FrameRange[], { from, to }: FrameRange, gapFrames: number): void {
  const last = ranges.at(-1)
  if (last && from - last.to <= gapFrames)
    ranges[ranges.length - 1] = { from: last.from, to: Math.max(last.to, to) }
  else ranges.push({ from, to })
}

/** At most so many as are listed: neighbours are joined, as many each time. */
function bounded(ranges: readonly FrameRange[]): readonly FrameRange[] {
  const size = Math.ceil(ranges.length / MOST_RANGES)
  return ranges
    .filter((_, k) => k % size === 0)
    .map(({ from }, k) => ({ from, to: ranges[Math.min(ranges.length, (k + 1) * size) - 1]?.to ?? from }))
}
