/**
 * A time in the take as people read it: 0:08.4, 12:05.0, 1:02:03.4.
 * @param digits behind the second
 */
export function printTime(seconds: number, digits = 1): string {
  const factor = 10 ** digits
  const rounded = Math.round(Math.max(0, seconds) * factor) / factor
  const hours = Math.floor(rounded / 3600)
  const minutes = Math.floor((rounded % 3600) / 60)
  const rest = (rounded % 60).toFixed(digits).padStart(digits > 0 ? digits + 3 : 2, '0')
  return hours > 0 ? `${hours}:${String(minutes).padStart(2, '0')}:${rest}` : `${minutes}:${rest}`
}

/** A tenth is told from a hundredth by more than this, seconds. */
const NEAR_SECONDS = 0.005

/** A time with as many digits as it takes to say it to a hundredth: 0:08.4, but 0:00.25. */
export function printExactTime(seconds: number): string {
  const isOfTenths = Math.abs(seconds * 10 - Math.round(seconds * 10)) < NEAR_SECONDS * 10
  return printTime(seconds, isOfTenths ? 1 : 2)
}

/** The same in words, for those who hear it: "1 minute 8.4 seconds". */
export function speakTime(seconds: number): string {
  const rounded = Math.round(Math.max(0, seconds) * 10) / 10
  const minutes = Math.floor(rounded / 60)
  const rest = counted(Number((rounded % 60).toFixed(1)), 'second')
  return minutes === 0 ? rest : `${counted(minutes, 'minute')} ${rest}`
}

function counted(count: number, unit: string): string {
  return `${count} ${unit}${count === 1 ? '' : 's'}`
}

/** Seconds of what people type: "8.4", "8,4 s", "1:08.4", "1:02:03". Null when it is not a time. */
export function parseTime(text: string): number | null {
  const match = /^(?:(?:(\d+):)?(\d+):)?(\d+(?:[.,]\d*)?)\s*s?$/.exec(text.trim())
  if (!match) return null
  const [, hours = '0', minutes = '0', seconds = ''] = match
  return Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds.replace(',', '.'))
}
