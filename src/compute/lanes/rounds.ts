import { type FrameRange, hopEnd } from '../../core'

/**
 * Goes round a stretch in pieces, and on where it stopped: whoever gives up a round when something newer is known
 * still comes past every piece. A picture then follows a hand that never rests, all of it, within one round.
 */
export class Rounds {
  private nextFrame = 0

  /** @param pieceFrames rounded up to whole hops of the gain traces */
  constructor(private readonly pieceFrames: number) {}

  /** Every piece of `stretch` once. What is not taken from the generator is where the next round begins. */
  *round({ from, to }: FrameRange): Generator<FrameRange, void, void> {
    const length = hopEnd(this.pieceFrames)
    const pieces: FrameRange[] = []
    for (let start = from; start < to; start += length)
      pieces.push({ from: start, to: Math.min(to, start + length) })
    const first = Math.max(
      0,
      pieces.findIndex((piece) => piece.from >= this.nextFrame),
    )
    for (const piece of [...pieces.slice(first), ...pieces.slice(0, first)]) {
      this.nextFrame = piece.to
      yield piece
    }
  }
}
