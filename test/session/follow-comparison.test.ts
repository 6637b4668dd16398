import { beforeEach, describe, expect, it, vi } from 'vitest'
import { TRACE_HOP_FRAMES } from '../../src/core'
import { followedApp, measured } from './followed-app'
import { evidenceOf, take } from './trials/trial-app'

let on: ReturnType<typeof followedApp>
const evidence = () => on.evidence.getState()

beforeEach(() => {
  on = followedApp()
  on.take.setState({ take: measured })
  on.last().onTracesOver()
})

describe('following the comparison', () => {
  it('says when a gesture has ended, so that figures need not wait for the hand to rest', () => {
    const { chain, handRests } = on
    const { edit, endGesture } = chain.getState()
    endGesture()
    expect(handRests).not.toHaveBeenCalled()
    edit((doc) => ({ chain: { ...doc, stages: doc.stages.toReversed() }, words: 'moved' }), 'drag')
    expect(handRests).not.toHaveBeenCalled()
    endGesture()
    expect(handRests).toHaveBeenCalledOnce()
  })

  it('says so once more where the gesture ended before figures were asked for, and not while the next goes on', async () => {
    const { chain, handRests } = on
    const { endGesture, edit } = chain.getState()
    const turn = () =>
      edit((doc) => ({ chain: { ...doc, stages: doc.stages.toReversed() }, words: 'moved' }), 'drag')
    turn()
    endGesture()
    handRests.mockClear()
    await on.drawn()
    expect(on.last().live).not.toBeNull()
    expect(handRests).toHaveBeenCalledOnce()
    on.last().onTracesOver()
    const { length } = on.asked
    turn()
    await on.drawn()
    expect(on.asked).toHaveLength(length + 1)
    expect(handRests).toHaveBeenCalledOnce()
  })

  it('asks for nothing before the take is measured', () => {
    const { asked, take: takes, changeChain, frame } = followedApp()
    takes.setState({ take })
    changeChain()
    frame()
    expect(asked).toHaveLength(0)
    takes.setState({ take: measured })
    expect(asked).toHaveLength(1)
  })

  it('has traces of what is seen come first while the chain changes, and only then', async () => {
    expect(on.last().live).toBeNull()
    on.view.setState({ seen: { from: 1000, to: 5000 } })
    on.changeChain()
    await on.drawn()
    expect(on.last().live).toEqual({ from: 1000, to: 5000 })
    on.listen.setState({ loop: { from: 0, to: 4000 } })
    expect(on.last()).toMatchObject({ live: null, loop: { from: 0, to: 4000 } })
  })

  it('asks once the frame of a change is made, for the newest of those in it', async () => {
    const before = on.asked.length
    on.changeChain()
    on.changeChain()
    await on.settled()
    expect(on.asked).toHaveLength(before)
    expect(evidence().working).toBe(0)
    await on.drawn()
    expect(on.asked).toHaveLength(before + 1)
    expect(on.last().comparison.processed).toEqual(on.chain.getState().chain)
  })

  it('asks for traces of the next move once those of the one before have come, or four frames have gone by', async () => {
    on.changeChain()
    await on.drawn()
    const before = on.asked.length
    on.changeChain()
    for (const _ of [1, 2]) await on.drawn()
    expect(on.asked).toHaveLength(before)
    on.last().onTracesOver()
    await on.drawn()
    expect(on.asked).toHaveLength(before + 1)
    on.changeChain()
    for (const _ of [1, 2, 3]) await on.drawn()
    expect(on.asked).toHaveLength(before + 1)
    await on.drawn()
    expect(on.asked).toHaveLength(before + 2)
  })

  it('does not wait for traces of a request that failed', async () => {
    on.last().fail(new Error('out of memory'))
    await on.settled()
    on.changeChain()
    const before = on.asked.length
    await on.drawn()
    expect(on.asked).toHaveLength(before + 1)
  })

  it('asks nothing about a take that went before the frame was made', async () => {
    const before = on.asked.length
    on.changeChain()
    on.take.setState({ take: { ...take, sound: { ...take.sound } } })
    await on.drawn()
    expect(on.asked).toHaveLength(before)
  })

  it('shows live traces over those of the evidence until newer evidence is there', async () => {
    const first = evidenceOf(on.last().comparison)
    on.last().answer(first)
    await on.settled()
    on.changeChain()
    await on.drawn()
    on.last().onLiveTraces([{ stageId: 'level', firstHop: 2, gainDb: Float32Array.of(-40, -41) }])
    on.frame()
    const live = evidence().liveTraces.get('level')?.trace
    const known = first.stages.get('level')?.trace
    expect(live?.hopFrames).toBe(TRACE_HOP_FRAMES)
    expect(live?.gainDb.subarray(2, 4)).toEqual(Float32Array.of(-40, -41))
    expect(live?.gainDb.subarray(4)).toEqual(known?.gainDb.subarray(4))
    expect(evidence().evidence).toBe(first)
    on.last().answer(first)
    await on.settled()
    expect(evidence().liveTraces.size).toBe(0)
    expect(evidence().working).toBeNull()
  })

  it('puts all live traces that have come in place at once, with the next frame', () => {
    const put = vi.fn()
    on.evidence.subscribe(put)
    const { onLiveTraces } = on.last()
    onLiveTraces([{ stageId: 'level', firstHop: 0, gainDb: Float32Array.of(-1, -1) }])
    onLiveTraces([{ stageId: 'level', firstHop: 1, gainDb: Float32Array.of(-2, -3) }])
    onLiveTraces([{ stageId: 'soften', firstHop: 0, gainDb: Float32Array.of(-4) }])
    expect(put).not.toHaveBeenCalled()
    on.frame()
    expect(put).toHaveBeenCalledTimes(1)
    const traces = evidence().liveTraces
    expect(traces.get('level')?.trace.gainDb.subarray(0, 4)).toEqual(Float32Array.of(-1, -2, -3, 0))
    expect(traces.get('soften')?.trace.gainDb[0]).toBe(-4)
    onLiveTraces([{ stageId: 'level', firstHop: 3, gainDb: Float32Array.of(-5) }])
    on.frame()
    const later = evidence().liveTraces
    expect(later.get('level')?.trace.gainDb.subarray(0, 4)).toEqual(Float32Array.of(-1, -2, -3, -5))
    expect(later.get('level')?.changed).toEqual({ from: 3, to: 4 })
    expect(later.get('soften')).toBe(traces.get('soften'))
  })

  it('drops live traces that evidence has overtaken', async () => {
    on.last().onLiveTraces([{ stageId: 'level', firstHop: 0, gainDb: Float32Array.of(-1) }])
    on.last().answer(evidenceOf(on.last().comparison))
    await on.settled()
    on.frame()
    expect(evidence().liveTraces.size).toBe(0)
  })

  it('leaves alone what comes for a request that is not the newest', async () => {
    const old = on.last()
    on.changeChain()
    await on.drawn()
    const answered = evidenceOf(old.comparison)
    old.onProgress(0.7)
    old.answer(answered)
    await on.settled()
    expect(evidence()).toMatchObject({ evidence: null, working: 0 })
    on.last().onProgress(0.3)
    expect(evidence().working).toBe(0.3)
  })

  it('says what went wrong, and forgets it with the next evidence', async () => {
    on.last().fail(new Error('out of memory'))
    await on.settled()
    expect(evidence().problem).toContain('out of memory')
    on.changeChain()
    await on.drawn()
    on.last().answer(evidenceOf(on.last().comparison))
    await on.settled()
    expect(evidence().problem).toBeNull()
  })

  it('asks once more for what could not be worked out', async () => {
    on.last().fail(new Error('out of memory'))
    await on.settled()
    const { length } = on.asked
    on.askAgain()
    expect(on.asked).toHaveLength(length + 1)
    on.last().answer(evidenceOf(on.last().comparison))
    await on.settled()
    expect(evidence().problem).toBeNull()
  })

  it('keeps nothing of a take that is gone', async () => {
    on.last().answer(evidenceOf(on.last().comparison))
    await on.settled()
    on.last().onLiveTraces([{ stageId: 'level', firstHop: 0, gainDb: Float32Array.of(-1) }])
    on.frame()
    on.last().onLiveTraces([{ stageId: 'level', firstHop: 0, gainDb: Float32Array.of(-2) }])
    on.take.setState({ take: { ...take, sound: { ...take.sound } } })
    on.frame()
    expect(evidence()).toMatchObject({ evidence: null, working: 0 })
    expect(on.view.getState().seen).toBeNull()
    expect(evidence().liveTraces.size).toBe(0)
  })
})
