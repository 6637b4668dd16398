import { frameCount, type Sound } from '../../core'

/** A stretch of every channel of a take, on its way to the worker. */
export interface TakePart {
  readonly fromFrame: number
  readonly channels: readonly Float32Array[]
}

/** Copied within about a hundredth of a second, so that the page goes on meanwhile. */
const PART_FRAMES = 2 ** 20

/** Copies of `take`, part by part: its memory may be moved. At least one. */
export function* takeParts(take: Sound, partFrames = PART_FRAMES): Generator<TakePart, void, void> {
  const frames = frameCount(take)
  let fromFrame = 0
  do {
    const end = fromFrame + partFrames
    yield { fromFrame, channels: take.channels.map((samples) => samples.slice(fromFrame, end)) }
    fromFrame = end
  } while (fromFrame < frames)
}

/** A take that comes in parts, in order. */
export class IncomingTake {
  readonly sound: Sound

  constructor(
    readonly id: number,
    private readonly frames: number,
    channelCount: number,
    sampleRate: number,
  ) {
    const channels = Array.from({ length: channelCount }, () => new Float32Array(frames))
    this.sound = { sampleRate, channels }
  }

  /** Puts a part in its place; true once the take is whole. */
  add({ fromFrame, channels }: TakePart): boolean {
    for (const [c, samples] of channels.entries()) this.sound.channels[c]?.set(samples, fromFrame)
    return fromFrame + (channels[0]?.length ?? 0) >= this.frames
  }
}
