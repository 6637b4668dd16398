import { plain, type Trace } from '../../../core'
import { LABEL_PX, type ScaleTick, stepFor } from '../lanes/scale-ticks'

const STEPS_DB = [6, 12, 24, 48]

/** A label at the very foot would touch the 0 of the lane beneath, in parts of its height. */
const FOOT_LABEL = 0.5

/** Labels from 0 dB down in steps of 6 dB or, where they would touch, of more. */
export function traceTicks(rangeDb: number, heightPx: number, labelPx = LABEL_PX): readonly ScaleTick[] {
  const step = stepFor(STEPS_DB, rangeDb, heightPx, labelPx)
  const ticks = Array.from({ length: Math.floor(rangeDb / step) + 1 }, (_, i) => ({
    y: traceY(-i * step, rangeDb, heightPx),
    // No minus before a nought.
    label: plain(-i * step + 0, 0),
  }))
  return ticks.filter(({ y }) => y <= heightPx - labelPx * FOOT_LABEL)
}

/** Where a gain stands, down from the top of the lane, pixels: on the middle of the line that is drawn there. */
export function traceY(gainDb: number, rangeDb: number, heightPx: number): number {
  return 0.5 + Math.min(1, -gainDb / rangeDb) * (heightPx - 1)
}

/** Where a trace reaches deepest. */
export interface Deepest {
  /** The middle of the hop, the first of such. */
  readonly frame: number
  readonly gainDb: number
}

/** Where a trace reaches deepest; null where it never leaves 0 dB. */
export function deepestOf({ hopFrames, gainDb }: Trace): Deepest | null {
  let deepest = 0
  let hop = -1
  for (let i = 0; i < gainDb.length; i++) {
    const value = gainDb[i] ?? 0
    if (value < deepest) {
      deepest = value
      hop = i
    }
  }
  return hop < 0 ? null : { frame: (hop + 0.5) * hopFrames, gainDb: deepest }
}
