import { SWEEP_GAIN_DB } from '../../core'

/** Longer than the monitor takes to reach another level, ms. */
const LEVEL_MS = 60

/** The order of a sweep, so that it starts low and ends low: the level goes down, then the band goes up; and back. */
export class SweepLevel {
  /** Whether the band is up. */
  lifted = false
  /** Level of everything meanwhile, dB. */
  levelDb = 0
  private on = false
  private timer: ReturnType<typeof setTimeout> | undefined

  /** @param onChange told when the level or the band is due to move by itself */
  constructor(private readonly onChange: () => void) {}

  set(on: boolean): void {
    if (on === this.on) return
    this.on = on
    clearTimeout(this.timer)
    if (on) this.levelDb = -SWEEP_GAIN_DB
    else this.lifted = false
    this.timer = setTimeout(() => {
      if (on) this.lifted = true
      else this.levelDb = 0
      this.onChange()
    }, LEVEL_MS)
  }
}
