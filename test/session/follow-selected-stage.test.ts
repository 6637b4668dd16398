import { beforeEach, describe, expect, it } from 'vitest'
import type { StageDetail } from '../../src/compute/stage-detail'
import { type ChainDoc, measure } from '../../src/core'
import { startingChain } from '../../src/demo'
import { setSetting } from '../../src/session/chain/chain-edits'
import { createChainStore } from '../../src/session/chain/chain-store'
import { createDetailStore } from '../../src/session/detail-store'
import { createEvidenceStore } from '../../src/session/evidence-store'
import { followSelectedStage } from '../../src/session/follow-selected-stage'
import { createTakeStore } from '../../src/session/take/take-store'
import { take } from './trials/trial-app'

const measured = { ...take, measures: measure(take.sound) }

interface Asked {
  readonly chain: ChainDoc
  readonly stageId: string
  answer(detail: StageDetail | null): void
  fail(error: Error): void
}

function detailOf(dbfs: number): StageDetail {
  const level = { hopFrames: 240, levelDbfs: Float32Array.of(dbfs) }
  return { level, sibilants: null, harmonics: null, levels: null }
}

function app() {
  const stores = {
    chain: createChainStore(startingChain()),
    take: createTakeStore(),
    evidence: createEvidenceStore(),
    detail: createDetailStore(),
  }
  const asked: Asked[] = []
  let known: StageDetail | undefined
  followSelectedStage(stores, {
    known: () => known,
    find: (chain, stageId) =>
      new Promise((answer, fail) => void asked.push({ chain, stageId, answer, fail })),
  })
  return {
    ...stores,
    asked,
    setKnown: (detail: StageDetail | undefined) => {
      known = detail
    },
    rest: () => stores.evidence.setState({ working: null }),
    work: () => stores.evidence.setState({ working: 0 }),
    settled: () => new Promise((resolve) => setTimeout(resolve, 0)),
  }
}

let on: ReturnType<typeof app>
const shown = () => on.detail.getState()
const moveThreshold = (to: number) => on.chain.getState().edit(setSetting('level', 'thresholdDb', to), 'drag')

beforeEach(() => {
  on = app()
  on.chain.getState().select('level')
  on.work()
  on.take.setState({ take: measured })
})

describe('following the selected stage', () => {
  it('asks once the evidence rests, and shows what comes', async () => {
    expect(on.asked).toEqual([])
    on.rest()
    expect(on.asked).toMatchObject([{ stageId: 'level' }])
    on.asked[0]?.answer(detailOf(-20))
    await on.settled()
    expect(shown()).toEqual({ stageId: 'level', detail: detailOf(-20) })
  })

  it('keeps what there is while a control of the stage is dragged, and asks for nothing', async () => {
    on.rest()
    on.asked[0]?.answer(detailOf(-20))
    await on.settled()
    const { detail } = shown()
    on.work()
    for (const to of [-30, -31, -32]) moveThreshold(to)
    expect(shown().detail).toBe(detail)
    expect(on.asked).toHaveLength(1)
    on.rest()
    expect(on.asked).toHaveLength(2)
  })

  it('shows what is known at once, and tells nobody where it is the same', () => {
    const known = detailOf(-10)
    on.setKnown(known)
    moveThreshold(-40)
    expect(shown().detail).toBe(known)
    let told = 0
    on.detail.subscribe(() => void told++)
    on.setKnown({ ...known })
    moveThreshold(-41)
    expect(told).toBe(0)
  })

  it('shows nothing of another stage, nor of another take', async () => {
    on.rest()
    on.asked[0]?.answer(detailOf(-20))
    await on.settled()
    on.work()
    on.chain.getState().select('sibilance')
    expect(shown()).toEqual({ stageId: 'sibilance', detail: null })
    on.setKnown(detailOf(-3))
    on.chain.getState().select('level')
    expect(shown().detail).not.toBeNull()
    on.take.setState({ take: { ...measured, sound: { ...take.sound }, measures: null } })
    expect(shown().detail).toBeNull()
  })

  it('drops an answer that came after another stage was selected', async () => {
    on.rest()
    on.chain.getState().select('sibilance')
    on.asked[0]?.answer(detailOf(-20))
    await on.settled()
    expect(shown()).toEqual({ stageId: 'sibilance', detail: null })
  })

  it('asks again after a failure', async () => {
    on.rest()
    on.asked[0]?.fail(new Error('stopped'))
    await on.settled()
    expect(shown().detail).toBeNull()
    moveThreshold(-22)
    expect(on.asked).toHaveLength(2)
  })
})
