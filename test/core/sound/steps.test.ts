import { expect, it } from 'vitest'
import { finished, partOf, type Steps } from '../../../src/core/sound/steps'

function* counted(to: number): Steps<string> {
  for (let n = 1; n <= to; n++) yield n / to
  return `${to} steps`
}

it('work in steps comes to its result in one go', () => {
  expect(finished(counted(3))).toBe('3 steps')
  expect(finished(counted(0))).toBe('0 steps')
})

it('a part of something longer tells what part of that is done, and comes to the same', () => {
  const steps = partOf(counted(4), 0.5, 0.75)
  expect([...steps]).toEqual([0.5625, 0.625, 0.6875, 0.75])
  expect(finished(partOf(counted(4), 0.5, 0.75))).toBe('4 steps')
})
