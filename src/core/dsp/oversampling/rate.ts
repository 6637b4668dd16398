/** How many times the rate is raised. */
export const OVERSAMPLING = 8

/**
 * Side taps of each doubling, lowest rate first. The near one must pass what is heard and stop its mirror image close
 * by; the further ones have an octave and more to spare.
 */
export const SIDE_TAPS = { near: 32, middle: 8, far: 4 }

/** Delay of one step up and down again, in frames of its higher rate. */
const delayOf = (sideTaps: number) => 2 * (2 * sideTaps - 1)

/** Delay up and down together in frames of the highest rate. */
const DELAY_AT_TOP = 4 * delayOf(SIDE_TAPS.near) + 2 * delayOf(SIDE_TAPS.middle) + delayOf(SIDE_TAPS.far)

/** Delay of up and down together, in whole frames of the base rate. */
export const OVERSAMPLER_LATENCY_FRAMES = Math.ceil(DELAY_AT_TOP / OVERSAMPLING)

/** What makes the delay whole, in frames of the highest rate. */
export const PADDING_AT_TOP = OVERSAMPLER_LATENCY_FRAMES * OVERSAMPLING - DELAY_AT_TOP
