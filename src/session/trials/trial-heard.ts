import { choicesOf, type TrialChoice, type TrialKind } from './trial-record'

/** What has sounded for this long has been heard, seconds. The short silence that leads to it counts along. */
export const MOMENT_SECONDS = 0.5
/** Where the playhead moves by more than this at once, seconds, it was put elsewhere: that is no listening. */
const JUMP_SECONDS = 0.5

/** How much of each choice has sounded in a round. Without having heard what is hidden, nobody can answer. */
export class RoundHearing {
  private readonly seconds = new Map<TrialChoice, number>()

  /** A round begins. */
  begin(): void {
    this.seconds.clear()
  }

  /** The playhead went on by so much while `choice` was listened to. */
  pass(choice: TrialChoice, seconds: number): void {
    if (seconds <= 0 || seconds > JUMP_SECONDS) return
    this.seconds.set(choice, (this.seconds.get(choice) ?? 0) + seconds)
  }

  /** Whether everything that is hidden in a round of this kind has sounded for a moment: X, or both A and B. */
  isEnough(kind: TrialKind): boolean {
    return hiddenChoicesOf(kind).every((choice) => (this.seconds.get(choice) ?? 0) >= MOMENT_SECONDS)
  }
}

function hiddenChoicesOf(kind: TrialKind): readonly TrialChoice[] {
  return kind === 'name-x' ? ['x'] : choicesOf(kind)
}
