import { vi } from 'vitest'
import type { Evidence, LoopEvidence } from '../../src/compute/evidence'
import type { EvidenceListener, EvidenceWanted } from '../../src/compute/evidence-wanted'
import { nextTask } from '../../src/compute/port/next-task'
import { type Comparison, type FrameRange, measure } from '../../src/core'
import { startingChain } from '../../src/demo'
import { createChainStore } from '../../src/session/chain/chain-store'
import { createEvidenceStore } from '../../src/session/evidence-store'
import { followComparison } from '../../src/session/follow-comparison'
import { createListenStore } from '../../src/session/listening/listen-store'
import { createTakeStore } from '../../src/session/take/take-store'
import { createViewStore } from '../../src/session/take/view-store'
import { take } from './trials/trial-app'

export const measured = { ...take, measures: measure(take.sound) }

/** What was asked of the worker, and how it answers. */
export interface Asked extends EvidenceWanted, EvidenceListener {
  answer(evidence: Evidence | null): void
  fail(error: Error): void
}

/** What was asked about a loop. */
export interface LoopAsked {
  readonly comparison: Comparison
  readonly range: FrameRange
  answer(found: LoopEvidence | null): void
  fail(error: Error): void
}

/** Stores that follow a worker which answers when the test says so. */
export function followedApp() {
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
