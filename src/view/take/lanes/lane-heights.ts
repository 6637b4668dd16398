/** What the lanes over the time axis are. */
export type LaneKind = 'marks' | 'wave' | 'spectrogram' | 'level' | 'gainReduction' | 'loudness'

/** How high a lane is at the usual text size, CSS pixels. */
interface LaneShare {
  /** However little room there is. */
  readonly leastPx: number
  /** Where nothing gives the lanes a height, as in one column. */
  readonly usualPx: number
  /** Its part of the room that is left once each lane has its least. */
  readonly weight: number
}

/** Add a kind of lane here, and where it is drawn in `lanes-stack.tsx`. */
const laneShares: Readonly<Record<LaneKind, LaneShare>> = {
  marks: { leastPx: 12, usualPx: 12, weight: 0 },
  wave: { leastPx: 76, usualPx: 104, weight: 16 },
  spectrogram: { leastPx: 48, usualPx: 80, weight: 6 },
  level: { leastPx: 38, usualPx: 64, weight: 2 },
  gainReduction: { leastPx: 24, usualPx: 44, weight: 1 },
  loudness: { leastPx: 26, usualPx: 38, weight: 1 },
}

/** Between two lanes, and between the last and the axis; 0.1875 rem in `lanes-stack.module.css`. */
const GAP_PX = 3
/** The time axis under them. */
const AXIS_PX = 22

/** Height of the time axis, CSS pixels. */
export function axisHeight(textScale: number): number {
  return Math.round(AXIS_PX * textScale)
}

/**
 * Heights of lanes that share `availablePx`, the axis and all gaps included, in whole CSS pixels: each has its least and
 * a part of what is left by its weight. Together they are higher than `availablePx` where that is not enough for all.
 * @param textScale size of text against the usual: the least heights grow with it
 */
export function laneHeights(
  availablePx: number,
  lanes: readonly LaneKind[],
  textScale = 1,
): readonly number[] {
  const left = Math.max(0, availablePx - roomOf(lanes, 'leastPx', textScale))
  const weights = lanes.reduce((sum, kind) => sum + laneShares[kind].weight, 0)
  let foot = 0
  return lanes.map((kind) => {
    const { leastPx, weight } = laneShares[kind]
    const top = foot
    foot += leastPx * textScale + left * (weight / weights)
    // Edges are rounded, so that what is lost on one lane is not lost on all.
    return Math.round(foot) - Math.round(top)
  })
}

/**
 * As styles take it, the height that lanes keep with their axis and all gaps: the least, and that where nothing gives
 * them one.
 */
export function roomFor(
  lanes: readonly LaneKind[],
  textScale: number,
): { readonly '--least-room': string; readonly '--usual-room': string } {
  return {
    '--least-room': `${roomOf(lanes, 'leastPx', textScale)}px`,
    '--usual-room': `${roomOf(lanes, 'usualPx', textScale)}px`,
  }
}

function roomOf(lanes: readonly LaneKind[], height: 'leastPx' | 'usualPx', textScale: number): number {
  const pictures = lanes.reduce((sum, kind) => sum + laneShares[kind][height], 0)
  return Math.ceil((pictures + lanes.length * GAP_PX) * textScale) + axisHeight(textScale)
}
