import type { Sound } from '../../core'
import type { HashedTake } from '../address'
import type { ToWorker } from '../messages'

type TakeMessage = Extract<ToWorker, { readonly type: 'take' }>
type TakePart = Extract<ToWorker, { readonly type: 'take-part' }>

/** A take that comes in parts, in order. */
export class IncomingTake {
  readonly hash: string
  private readonly sound: Sound
  private readonly frames: number

  constructor({ hash, frames, channelCount, sampleRate }: TakeMessage) {
    this.hash = hash
    this.frames = frames
    const channels = Array.from({ length: channelCount }, () => new Float32Array(frames))
    this.sound = { sampleRate, channels }
  }

  /** Puts a part in its place. @returns the take once it is whole */
  add({ fromFrame, channels }: TakePart): HashedTake | null {
    for (const [c, samples] of channels.entries()) this.sound.channels[c]?.set(samples, fromFrame)
    const isWhole = fromFrame + (channels[0]?.length ?? 0) >= this.frames
    return isWhole ? { hash: this.hash, sound: this.sound } : null
  }
}
