import { beforeEach, describe, expect, it } from 'vitest'
import type { LoopEvidence } from '../../src/compute/evidence'
import { followedApp, type LoopAsked, measured } from './followed-app'
import { evidenceOf, take } from './trials/trial-app'

let on: ReturnType<typeof followedApp>
const evidence = () => on.evidence.getState()

beforeEach(() => {
  on = followedApp()
  on.take.setState({ take: measured })
  on.last().onTracesOver()
})

describe('following the loop', () => {
  const loop = { from: 0, to: 4000 }
  /** Evidence of the loop that was asked about last. */
  const foundOf = ({ comparison, range }: LoopAsked): LoopEvidence => {
    const { bypassed, processed } = evidenceOf(comparison)
    return { range, bypassed, processed, reductions: new Map(), chains: comparison }
  }
  const lastLoop = () => {
    const request = on.loops.at(-1)
    if (!request) throw new Error('nothing was asked about a loop')
    return request
  }
  const answerEvidence = async () => {
    on.last().answer(evidenceOf(on.last().comparison))
    await on.settled()
  }
  const answerLoop = async () => {
    const found = foundOf(lastLoop())
    lastLoop().answer(found)
    await on.settled()
    return found
  }

  it('asks about it once the evidence of the whole take is there, and never has that wait', async () => {
    on.listen.setState({ loop })
    expect(on.loops).toHaveLength(0)
    await answerEvidence()
    expect(evidence()).toMatchObject({ working: null, loop: null, isLoopWorking: true })
    expect(lastLoop()).toMatchObject({ range: loop, comparison: on.last().comparison })
    const found = await answerLoop()
    expect(evidence()).toMatchObject({ isLoopWorking: false })
    expect(evidence().loop).toBe(found)
  })

  it('asks about no loop where none is set', async () => {
    await answerEvidence()
    expect(on.loops).toHaveLength(0)
    expect(evidence().isLoopWorking).toBe(false)
  })

  it('keeps what is known of a loop while the chain changes, and drops it once the loop moves or goes', async () => {
    on.listen.setState({ loop })
    await answerEvidence()
    const found = await answerLoop()
    on.changeChain()
    await on.drawn()
    expect(evidence().loop).toBe(found)
    await answerEvidence()
    expect(evidence().loop).toBe(found)
    expect(evidence().isLoopWorking).toBe(true)
    const newer = await answerLoop()
    expect(evidence().loop).toBe(newer)
    on.listen.setState({ loop: { from: 400, to: 4000 } })
    await answerEvidence()
    expect(evidence()).toMatchObject({ loop: null, isLoopWorking: true })
    on.listen.setState({ loop: null })
    await answerEvidence()
    expect(evidence()).toMatchObject({ loop: null, isLoopWorking: false })
  })

  it('leaves alone what comes for a loop that has moved on, or for a take that is gone', async () => {
    on.listen.setState({ loop })
    await answerEvidence()
    const old = lastLoop()
    on.listen.setState({ loop: { from: 400, to: 4000 } })
    old.answer(foundOf(old))
    await on.settled()
    expect(evidence().loop).toBeNull()
    await answerEvidence()
    await answerLoop()
    on.take.setState({ take: { ...take, sound: { ...take.sound } } })
    expect(evidence()).toMatchObject({ loop: null, isLoopWorking: false })
  })

  it('says why it could not be worked out, and leaves the evidence of the take', async () => {
    on.listen.setState({ loop })
    await answerEvidence()
    lastLoop().fail(new Error('out of memory'))
    await on.settled()
    expect(evidence().problem).toBe('The figures of the loop could not be worked out: out of memory')
    expect(evidence()).toMatchObject({ loop: null, isLoopWorking: false, working: null })
    expect(evidence().evidence).not.toBeNull()
  })
})
