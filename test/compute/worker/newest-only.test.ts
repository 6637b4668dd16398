import { describe, expect, it } from 'vitest'
import { NewestOnly, type Turn } from '../../../src/compute/worker/newest-only'

/** Work that lasts until the test ends it. */
function held() {
  const begun: { readonly request: string; readonly turn: Turn; end(): void }[] = []
  const queue = new NewestOnly<string>(
    (request, turn) => new Promise<void>((end) => void begun.push({ request, turn, end })),
  )
  const settled = () => new Promise((resolve) => setTimeout(resolve, 0))
  return { begun, queue, settled, requests: () => begun.map(({ request }) => request) }
}

describe('newest only', () => {
  it('does one thing at a time and then the newest, none of those between', async () => {
    const { queue, begun, settled, requests } = held()
    for (const request of ['a', 'b', 'c', 'd']) queue.ask(request)
    expect(requests()).toEqual(['a'])
    begun[0]?.end()
    await settled()
    expect(requests()).toEqual(['a', 'd'])
    begun[1]?.end()
    await settled()
    queue.ask('e')
    expect(requests()).toEqual(['a', 'd', 'e'])
  })

  it('tells the work under way when it is overtaken or dropped', () => {
    const { queue, begun } = held()
    queue.ask('a')
    expect(begun[0]?.turn.isNewest()).toBe(true)
    queue.ask('b')
    expect(begun[0]?.turn.isNewest()).toBe(false)
    const dropped = held()
    dropped.queue.ask('a')
    dropped.queue.drop()
    expect(dropped.begun[0]?.turn.isNewest()).toBe(false)
  })

  it('does nothing more after what was dropped', async () => {
    const { queue, begun, settled, requests } = held()
    queue.ask('a')
    queue.ask('b')
    queue.drop()
    begun[0]?.end()
    await settled()
    expect(requests()).toEqual(['a'])
  })

  it('waits until something newer comes, not a moment longer', async () => {
    const { queue, begun } = held()
    const never = new Promise<void>(() => undefined)
    queue.ask('a')
    const waiting = begun[0]?.turn.orNewer(never)
    queue.ask('b')
    await waiting
    await begun[0]?.turn.orNewer(never)
    expect(begun[0]?.turn.isNewest()).toBe(false)
  })

  it('waits no longer than what it waits for', async () => {
    const { queue, begun } = held()
    queue.ask('a')
    await begun[0]?.turn.orNewer(Promise.resolve())
    expect(begun[0]?.turn.isNewest()).toBe(true)
  })
})
