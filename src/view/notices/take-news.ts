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
  const came = isDemo
    ? `The demo is in the place of ${before.take.name}.`
    : `${now.take.name} is in the place of ${before.take.name}.`
  const words = [came, 'The chain and its undo steps stayed.', backingNews(before, now)]
  return [...words, looped && 'The loop went with the take before.'].filter(Boolean).join(' ')
}

function backingNews({ backing: before }: OnBench, { take, backing: now }: OnBench): string | null {
  // The demo brings its own.
  if (!before || take?.header === null) return null
  if (now?.sound === before.sound) return `The backing ${before.name} stayed.`
  return before.ofDemo
    ? 'The demo’s backing was put away: open yours to hear the voice in it.'
    : `The backing ${before.name} was put away, for its sample rate is another: open it again to have it converted.`
}
