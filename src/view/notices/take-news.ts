import type { TakeState } from '../../state/take-store'

type OnBench = Pick<TakeState, 'take' | 'backing'>

/**
 * What became of everything else when another take came onto the bench; null where no other did, or nothing was there
 * before.
 * @param looped whether a loop was set, which goes with its take
 */
export function takeNews(before: OnBench, now: OnBench, looped: boolean): string | null {
  if (!before.take || !now.take || before.take.sound === now.take.sound) return null
  const isDemo = now.take.header === null
  if (isDemo && before.take.header === null && before.backing?.sound === now.backing?.sound) return null
  const words = [`In the place of ${before.take.name}.`, 'The chain stayed.', backingNews(before, now)]
  return [...words, looped && 'The loop went.'].filter(Boolean).join(' ')
}

function backingNews({ backing: before }: OnBench, { take, backing: now }: OnBench): string | null {
  // The demo brings its own.
  if (!before || take?.header === null) return null
  if (now?.sound === before.sound) return `The backing ${before.name} stayed.`
  return before.ofDemo
    ? 'The demo’s backing went.'
    : `The backing ${before.name} went, for its sample rate is another: open it again to have it converted.`
}
