import { describe, expect, it } from 'vitest'
import { lazyPart, PartError } from '../../src/session/lazy-part'

/** A part whose fetches fail until `fails` says no more. */
function unreliable(fails: number) {
  let fetches = 0
  const part = lazyPart('Delivery', async () => {
    fetches++
    if (fetches <= fails) throw new TypeError('Failed to fetch http://host/assets/deliver.js')
    return { fetches }
  })
  return { part, fetches: () => fetches }
}

describe('a lazy part', () => {
  it('is fetched once, however often and by whomever it is asked for', async () => {
    const { part, fetches } = unreliable(0)
    expect(part.loaded).toBeNull()
    const [first, second] = await Promise.all([part.load(), part.load()])
    expect(second).toBe(first)
    expect(part.loaded).toBe(first)
    await part.load()
    expect(fetches()).toBe(1)
  })

  it('is fetched again after a failure', async () => {
    const { part, fetches } = unreliable(2)
    await expect(part.load()).rejects.toThrow(PartError)
    await expect(part.load()).rejects.toThrow(PartError)
    await expect(part.load()).resolves.toEqual({ fetches: 3 })
    expect(fetches()).toBe(3)
  })

  it('says what could not be loaded and what to do, and shows no address', async () => {
    const { message } = await unreliable(1)
      .part.load()
      .then(
        () => new Error(),
        (error: Error) => error,
      )
    expect(message).toMatch(/^Delivery could not be loaded\. Check the connection and try again\./)
    expect(message).not.toMatch(/http|assets/)
  })
})
