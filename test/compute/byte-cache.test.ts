import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ByteCache } from '../../src/compute/byte-cache'
import { holds, SEED } from '../setup/random-chains'

const BUDGET = 100
const keys = fc.constantFrom(...'abcdefgh')
const actions = fc.array(
  fc.oneof(
    { weight: 4, arbitrary: fc.record({ do: fc.constant('put' as const), key: keys, bytes: fc.nat(60) }) },
    { weight: 3, arbitrary: fc.record({ do: fc.constant('get' as const), key: keys }) },
    { weight: 1, arbitrary: fc.record({ do: fc.constant('delete' as const), key: keys }) },
    {
      weight: 1,
      arbitrary: fc.record({ do: fc.constant('pin' as const), keys: fc.uniqueArray(keys, { maxLength: 3 }) }),
    },
  ),
  { maxLength: 40 },
)

describe(`a cache with a budget (seed ${SEED})`, () => {
  it('never holds more than its budget and what is pinned, and drops what was used least recently first', () => {
    holds(actions, 300, (all) => {
      const cache = new ByteCache<number>(BUDGET)
      /** What it should hold, the least recently used first. */
      let model: { key: string; bytes: number; value: number }[] = []
      let pinned: readonly string[] = []
      const makeRoom = () => {
        for (const entry of [...model]) {
          if (model.reduce((sum, { bytes }) => sum + bytes, 0) <= BUDGET) return
          if (!pinned.includes(entry.key)) model = model.filter((other) => other !== entry)
        }
      }
      for (const [value, action] of all.entries()) {
        if (action.do === 'pin') {
          pinned = action.keys
          cache.pin(new Set(pinned))
          makeRoom()
          continue
        }
        const { key } = action
        const there = model.find((entry) => entry.key === key)
        if (action.do === 'get') {
          expect(cache.get(key)).toBe(there?.value)
          if (there) model = [...model.filter((entry) => entry !== there), there]
          continue
        }
        model = model.filter((entry) => entry !== there)
        if (action.do === 'delete') cache.delete(key)
        else {
          cache.put(key, value, action.bytes)
          model.push({ key, bytes: action.bytes, value })
          makeRoom()
        }
        expect(cache.bytes).toBe(model.reduce((sum, { bytes }) => sum + bytes, 0))
        for (const name of 'abcdefgh') expect(cache.has(name)).toBe(model.some((entry) => entry.key === name))
      }
    })
  })

  it('does not make room for what is larger than all of it', () => {
    const cache = new ByteCache<number>(BUDGET)
    cache.put('a', 1, 60)
    cache.put('b', 2, BUDGET + 1)
    expect([cache.get('a'), cache.get('b')]).toEqual([1, undefined])
    cache.pin(new Set(['b']))
    cache.put('b', 2, BUDGET + 1)
    expect([cache.get('a'), cache.get('b')]).toEqual([undefined, 2])
    cache.clear()
    expect([cache.bytes, cache.has('b')]).toEqual([0, false])
  })
})
