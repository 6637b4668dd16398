/** Share of a stop during which the mouth is shut; common practice, no source. */
const closedShare = 0.55

/** When a stop between these two times opens, seconds. */
export function burstStart(startSeconds: number, endSeconds: number): number {
  return startSeconds + closedShare * (endSeconds - startSeconds)
}
