/** Heights of the lanes at the usual text size, CSS pixels: they grow with it. */
export const laneHeights = { wave: 60, gainReduction: 32, loudness: 34, axis: 22 } as const
