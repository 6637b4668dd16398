import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { soundKey } from '../../src/compute/address'
import { sameStage } from '../../src/core'
import { chains, holds, SEED, stages } from '../setup/random-chains'

describe(`the key of a sound (seed ${SEED})`, () => {
  it('leaves out stages that are off, and what stages are called', () => {
    holds(chains(), 100, ({ stages: all }) => {
      const on = all.filter(({ on }) => on).map((stage, k) => ({ ...stage, id: `another ${k}` }))
      expect(soundKey({ take: 'a', stages: all })).toBe(soundKey({ take: 'a', stages: on }))
    })
  })

  it('tells takes, settings and orders apart', () => {
    holds(fc.tuple(stages(), stages()), 100, ([one, two]) => {
      const key = (...of: (typeof one)[]) => soundKey({ take: 'a', stages: of })
      expect(key(one)).not.toBe(soundKey({ take: 'b', stages: [one] }))
      expect(key(one)).not.toBe(key())
      expect(key(one) === key(two)).toBe(sameStage(one, { ...two, id: one.id }))
      expect(key(one, two) === key(two, one)).toBe(key(one) === key(two))
    })
  })
})
