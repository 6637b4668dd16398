import { type Backing, isolated, type TakeState } from '../../session/take/take-store'

/** What is open: a take, and what goes with it. */
export type Opened = Pick<TakeState, 'take' | 'backing'>

/**
 * What became of everything else when another take was opened; null where no other was, or nothing was there before.
 *
 * @param before what was open when the take came in
 * @param now what is open, which may have changed since
 * @param looped whether a loop was set, which goes with its take
 */
export function takeNews(before: Opened, now: Opened, looped: boolean): string | null {
  if (!before.take || !now.take || before.take.sound === now.take.sound) return null
  const isDemo = now.take.header === null
  if (isDemo && before.take.header === null && before.backing?.sound === now.backing?.sound) return null
  // The demo brings its own backing.
  const backing = isDemo ? null : backingNews(before.backing, now.backing, now.take.sound.sampleRate)
  const words = [`Replaced ${isolated(before.take.name)}.`, 'Your chain is unchanged.', backing]
  return [...words, looped && 'The loop was cleared.'].filter(Boolean).join(' ')
}

function backingNews(before: Backing | null, now: Backing | null, sampleRate: number): string | null {
  if (!before) return now && `Backing: ${isolated(now.name)}.`
  const last = before.ofDemo ? 'the demo backing' : `the backing ${isolated(before.name)}`
  if (now?.sound === before.sound) return `Kept ${last}.`
  if (now) return `${isolated(now.name)} replaced ${last}.`
  if (before.ofDemo || before.sound.sampleRate === sampleRate) return `Removed ${last}.`
  return `Removed ${last}: its sample rate differs from the take’s. Open it again to convert it.`
}
