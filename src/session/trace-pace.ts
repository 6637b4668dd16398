import { nextTask } from '../compute/port/next-task'

/** Frames that a move waits at most for the traces of one before it: longer would look as if lanes stood still. */
const MOST_FRAMES = 4

/**
 * When live traces of a move are asked for. After its frame is made: on few processors those who trace would hold up
 * the picture under the hand. And once those under way have come, unless they take long: begun at the end of a frame,
 * they mostly end before the next.
 */
export class TracePace {
  private underWay: object | null = null

  /** @param atNextFrame calls what it is given when the next frame is made */
  constructor(private readonly atNextFrame: (then: () => void) => void) {}

  /** Waits until it is time, or `isNewest` says no. */
  async wait(isNewest: () => boolean): Promise<void> {
    for (let frame = 0; frame === 0 || (this.underWay && frame < MOST_FRAMES && isNewest()); frame++) {
      await new Promise<void>((resolve) => this.atNextFrame(resolve))
      await nextTask()
    }
  }

  /** Traces are under way until what this returns is called, or others are. */
  begin(): () => void {
    const traces = {}
    this.underWay = traces
    return () => {
      if (this.underWay === traces) this.underWay = null
    }
  }
}
