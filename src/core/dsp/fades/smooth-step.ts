/**
 * How far a fade has come at `share` (0 to 1) of its time: 0 to 1, level at both ends, so that what it spreads
 * around a tone falls off by 18 dB per octave, where that of a straight line falls off by 12.
 */
export function smoothStep(share: number): number {
  return share * share * (3 - 2 * share)
}
