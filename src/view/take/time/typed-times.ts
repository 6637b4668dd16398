import { printTime } from '../../words/time-text'

/** Times are printed to tenths: as much behind the end is still the end, seconds. */
const PRINTED_SECONDS = 0.05

/** What to say to a time, in seconds, behind the end of a take of so many seconds; null to one that is in it. */
export function behindEnd(seconds: number, takeSeconds: number): string | null {
  return seconds > takeSeconds + PRINTED_SECONDS
    ? `The take ends at ${printTime(takeSeconds)}. Type an earlier time.`
    : null
}
