import { isolated, type TimingDoubt } from '../../session/take/take-store'

/** What is open, and what cannot be told of where its sound lies. */
interface Timed {
  readonly name: string
  readonly timing?: TimingDoubt | null
}

/** That a file may sit late, by how much, and what to do about it; null where there is no doubt. */
export function timingWords(opened: Timed | null): string | null {
  if (!opened?.timing) return null
  const { mostLateMs, missingMs } = opened.timing
  const missing =
    missingMs > 0 ? `, and ${missingMs.toFixed(0)} ms of it are missing, probably at its end` : ''
  const late = `${isolated(opened.name)} may start up to ${Math.ceil(mostLateMs)} ms late${missing}`
  return `${late}: how much silence its encoder added could not be determined. Use WAV or FLAC where timing matters.`
}
