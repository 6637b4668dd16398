import { describe, expect, it } from 'vitest'
import { chainOf, MAX_STAGES, trimStage } from '../../../src/core'
import { startingChain } from '../../../src/demo'
import { lowerOutput } from '../../../src/session/chain/chain-edits'

describe('lowering the output', () => {
  it('adds a gain at the end of the chain', () => {
    const edit = lowerOutput(4.9)(startingChain())
    expect(edit?.words).toBe('output lowered by 4.9 dB')
    expect(edit?.chain.stages.slice(0, -1)).toEqual(startingChain().stages)
    expect(edit?.chain.stages.at(-1)).toEqual(trimStage('gain-1', -4.9))
  })

  it('sets the gain that is there already, unless that is off', () => {
    const chain = chainOf([...startingChain().stages, trimStage('out', 1.2)])
    expect(lowerOutput(0.3)(chain)?.chain.stages.at(-1)).toEqual(trimStage('out', 0.9))
    const off = chainOf([{ ...trimStage('out', 1.2), on: false }])
    expect(lowerOutput(2)(off)?.chain.stages).toHaveLength(2)
  })

  it('adds another where the gain that is there cannot go so low, and nothing to a full chain', () => {
    const low = chainOf([trimStage('out', -59)])
    expect(lowerOutput(2)(low)?.chain.stages).toEqual([trimStage('out', -59), trimStage('gain-1', -2)])
    const [first] = startingChain().stages
    if (!first) throw new Error('the starting chain has stages')
    const full = Array.from({ length: MAX_STAGES }, (_, k) => ({ ...first, id: `stage-${k}` }))
    expect(lowerOutput(2)(chainOf(full))).toBeNull()
  })
})
