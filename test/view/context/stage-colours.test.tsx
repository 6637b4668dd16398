import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { COLOURS, withColours } from '../../../src/view/context/stage-colours'

const stages = (...ids: string[]) => ids.map((id) => ({ id }))

describe('colours of stages', () => {
  it('stay with their stages when those are moved, and come back with one that was gone', () => {
    const first = withColours(new Map(), stages('a', 'b', 'c'))
    expect([...first.values()]).toEqual([0, 1, 2])
    expect(withColours(first, stages('c', 'a', 'b'))).toBe(first)
    const grown = withColours(withColours(first, stages('a', 'c')), stages('a', 'c', 'd'))
    // What the one that is gone had is free.
    expect(grown.get('d')).toBe(1)
    expect(grown.get('b')).toBe(1)
  })

  it('are all different for as many stages as there are colours, however they came', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 1, maxLength: 20 }), (toggles) => {
        const present = new Set<string>()
        let colours = withColours(new Map(), [])
        let next = 0
        for (const toggle of toggles) {
          const leaving = [...present][toggle]
          if (leaving !== undefined) present.delete(leaving)
          else if (present.size < COLOURS) present.add(`stage ${next++}`)
          colours = withColours(colours, stages(...present))
          expect(new Set([...present].map((id) => colours.get(id))).size).toBe(present.size)
        }
      }),
    )
  })
})
