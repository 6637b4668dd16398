import { printExactTime, printTime } from '../../words/time-text'

/** What to say to a time, in seconds, that cannot be; null where it can. */
type Refusal = string | null

/** Times are printed to tenths: as much behind the end is still the end, seconds. */
const PRINTED_SECONDS = 0.05

/** Of a position in a take of so many seconds. */
export function positionRefusal(seconds: number, takeSeconds: number): Refusal {
  return seconds > takeSeconds + PRINTED_SECONDS
    ? `The take ends at ${printTime(takeSeconds)}. Type an earlier time.`
    : null
}

/** Of the beginning of a loop that ends at `endSeconds`, of so many seconds at least. */
export function loopFromRefusal(seconds: number, endSeconds: number, shortestSeconds: number): Refusal {
  return endSeconds - seconds < shortestSeconds
    ? `The loop ends at ${printExactTime(endSeconds)}. Type an earlier time, or move its end first.`
    : null
}

/** Of the end of a loop that begins at `startSeconds`, of so many seconds at least. */
export function loopToRefusal(
  seconds: number,
  startSeconds: number,
  takeSeconds: number,
  shortestSeconds: number,
): Refusal {
  if (seconds - startSeconds < shortestSeconds)
    return `The loop starts at ${printExactTime(startSeconds)}. Type a later time, or move its start first.`
  return positionRefusal(seconds, takeSeconds)
}
