import type { HiddenSide } from '../../core'
import { choicesOf, type TrialChoice, type TrialKind } from '../../session/trials/trial-record'

/** What a key press asks for during a round. */
export type TrialKey =
  | { readonly does: 'listen'; readonly choice: TrialChoice }
  | { readonly does: 'say'; readonly said: HiddenSide }
  | { readonly does: 'answer' | 'play' }

/** What has the focus, as far as it uses keys itself. */
export type FocusHolder = 'button' | 'slider' | 'radio-to-choose' | 'none'

const LETTERS = ['a', 'b', 'x']

/** The keys of a round as they are printed, with what they do. */
export const trialKeyRows: readonly { readonly printed: string; readonly does: string }[] = [
  { printed: '1, 2, 3', does: 'listen to the choices from left to right' },
  { printed: 'A, B, X', does: 'the same' },
  { printed: '←, →', does: 'choose the answer on the left, on the right' },
  { printed: 'Enter', does: 'answer' },
  { printed: 'Space', does: 'play, stop' },
  { printed: 'Esc', does: 'quit the trial, after a question' },
]

/**
 * 1, 2, 3 (or A, B, X) listen, the left and right arrows choose an answer, Enter gives it, Space plays and stops.
 * A button keeps Enter and Space, a slider the arrows, an answer not chosen yet Space.
 * @param singleKeys whether keys that print something do something
 */
export function trialKeyOf(
  key: string,
  kind: TrialKind,
  holder: FocusHolder,
  singleKeys: boolean,
): TrialKey | null {
  const [left, right] = answersOf(kind)
  if (key === 'ArrowLeft') return holder === 'slider' ? null : { does: 'say', said: left }
  if (key === 'ArrowRight') return holder === 'slider' ? null : { does: 'say', said: right }
  if (key === 'Enter') return holder === 'button' ? null : { does: 'answer' }
  if (!singleKeys) return null
  if (key === ' ') return holder === 'button' || holder === 'radio-to-choose' ? null : { does: 'play' }
  const letter = LETTERS.indexOf(key.toLowerCase())
  const choice = choicesOf(kind)[letter >= 0 ? letter : Number(key) - 1]
  return choice ? { does: 'listen', choice } : null
}

/** The answers as they stand beside one another, from left to right. */
export function answersOf(kind: TrialKind): readonly [HiddenSide, HiddenSide] {
  return kind === 'name-x' ? ['bypassed', 'processed'] : ['processed', 'bypassed']
}
