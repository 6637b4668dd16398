import { beforeEach, describe, expect, it, vi } from 'vitest'
import type { EvidenceListener, EvidenceWanted } from '../../src/compute/compute'
import type { Evidence, LoopEvidence } from '../../src/compute/evidence'
import { nextTask } from '../../src/compute/port/next-task'
import { type Comparison, type FrameRange, measure, TRACE_HOP_FRAMES } from '../../src/core'
import { startingChain } from '../../src/demo'
import { createChainStore } from '../../src/session/chain/chain-store'
import { createEvidenceStore } from '../../src/session/evidence-store'
import { followComparison } from '../../src/session/follow-comparison'
import { createListenStore } from '../../src/session/listening/listen-store'
import { createTakeStore } from '../../src/session/take/take-store'
import { createViewStore } from '../../src/session/take/view-store'
import { evidenceOf, take } from './trials/trial-app'

const measured = { ...take, measures: measure(take.sound) }

interface Asked extends EvidenceWanted, EvidenceListener {
  answer(evidence: Evidence | null): void
  fail(error: Error): void
}

interface LoopAsked {
  readonly comparison: Comparison
  readonly range: FrameRange
  answer(found: LoopEvidence | null): void
  fail(error: Error): void
}

/** Stores that follow a worker which answers when the test says so. */
function app() {
  const take = createTakeStore()
  const stores = {
    chain: createChainStore(startingChain()),
    take,
    view: createViewStore(take),
    listen: createListenStore(),
    evidence: createEvidenceStore(),
  }
  const asked: Asked[] = []
  const loops: LoopAsked[] = []
  const frames: (() => void)[] = []
  const handRests = vi.fn()
  const worker = {
    handRests,
    loopEvidence: (comparison: Comparison, range: FrameRange) =>
      new Promise<LoopEvidence | null>(
        (answer, fail) => void loops.push({ comparison, range, answer, fail }),
      ),
    evidence: (wanted: EvidenceWanted, listener: EvidenceListener) =>
      new Promise<Evidence | null>(
        (answer, fail) => void asked.push({ ...wanted, ...listener, answer, fail }),
      ),
  }
  const askAgain = followComparison(stores, worker, (then) => void frames.push(then))
  const frame = () => {
    for (const then of frames.splice(0)) then()
  }
  const last = () => {
    const request = asked.at(-1)
    if (!request) throw new Error('nothing was asked')
    return request
  }
  const changeChain = () =>
    stores.chain
      .getState()
      .edit((chain) => ({ chain: { ...chain, stages: chain.stages.toReversed() }, words: 'moved' }))
  const settled = () => new Promise((resolve) => setTimeout(resolve, 0))
  /** Makes a frame, and waits for what follows it. */
  const drawn = async () => {
    frame()
    await nextTask()
    await settled()
  }
  return { ...stores, handRests, asked, loops, askAgain, last, changeChain, settled, frame, drawn }
}

let on: ReturnType<typeof app>
const evidence = () => on.evidence.getState()

beforeEach(() => {
  on = app()
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
    const { asked, take: takes, changeChain, frame } = app()
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
