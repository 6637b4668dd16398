import type { HiddenSide } from '../../core'

/** Longer than the monitor takes to fade, ms. */
const FADE_MS = 60
/** Longer than one side takes to become the other, ms. */
const CHANGE_MS = 30

/**
 * Goes from one hidden side to another through a short silence. It takes the same way whether the two are the same
 * side or not: heard without a gap, the joint itself would tell.
 */
export class TrialSwitch {
  private side: HiddenSide | null = null
  private timer: ReturnType<typeof setTimeout> | undefined

  /** @param hear plays a side from now on, or holds it silent */
  constructor(private readonly hear: (side: HiddenSide, muted: boolean) => void) {}

  /** Begins at the side that everybody knows to be heard now. */
  begin(side: HiddenSide): void {
    this.side = side
  }

  /** Goes to a side; at once where nothing plays. */
  goTo(side: HiddenSide, playing: boolean): void {
    clearTimeout(this.timer)
    const from = this.side ?? side
    this.side = side
    if (!playing) {
      this.hear(side, false)
      return
    }
    this.hear(from, true)
    this.timer = setTimeout(() => {
      this.hear(side, true)
      this.timer = setTimeout(() => this.hear(side, false), CHANGE_MS)
    }, FADE_MS)
  }

  /** Forgets what is heard, and what was still to come. */
  end(): void {
    clearTimeout(this.timer)
    this.side = null
  }
}
