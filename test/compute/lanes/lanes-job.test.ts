import { beforeEach, describe, expect, it } from 'vitest'
import type { StretchTrace } from '../../../src/compute/lanes/live-traces'
import { groundOf, PIECE_FRAMES, Tracer } from '../../../src/compute/worker/tracer'
import {
  type ChainDoc,
  chainOf,
  type FrameRange,
  frameCount,
  renderChain,
  TRACE_HOP_FRAMES,
} from '../../../src/core'
import { stageWith } from '../../setup/chains'
import { furthestDb, LANES, lanesChain } from '../../setup/lanes'
import { noise } from '../../setup/signals'

const RATE = 44_100
const take = noise(RATE, 14, 1, 5, (at) => 0.02 + 0.4 * Math.sin(at * at * 2) ** 2)
const WHOLE = { from: 0, to: frameCount(take) }
const PIECES = Math.ceil(WHOLE.to / PIECE_FRAMES)
const chain = lanesChain()

/** A picture of 24 dB over 32 pixels does not show this much, dB. */
const NOT_SEEN_DB = 0.05

let come: (readonly StretchTrace[])[]
beforeEach(() => {
  come = []
})

const tracerOf = (stretch: FrameRange) => new Tracer(groundOf(take, stretch, 3, 0.1))

/** @param pieces after which something newer is known; none for never */
async function trace(tracer: Tracer, { stages }: ChainDoc, pieces = Number.POSITIVE_INFINITY): Promise<void> {
  let left = pieces
  await tracer.round(
    stages,
    () => --left > 0,
    (traces) => come.push(traces),
  )
}

function expectLanes(doc: ChainDoc, stretch: FrameRange): void {
  const { traces } = renderChain(take, doc)
  for (const id of LANES)
    expect(furthestDb(come.flat(), id, traces.get(id)?.gainDb, stretch)).toBeLessThan(NOT_SEEN_DB)
}

describe('lanes that follow a hand', () => {
  it('are those of a render to within what can be seen, a piece of all of them at a time', async () => {
    await trace(tracerOf(WHOLE), chain)
    expectLanes(chain, WHOLE)
    expect(come).toHaveLength(PIECES)
    for (const piece of come) {
      expect(piece.map(({ stageId }) => stageId)).toEqual(LANES)
      expect(new Set(piece.map(({ firstHop }) => firstHop)).size).toBe(1)
    }
  })

  it('are right in a stretch somewhere in the take', async () => {
    const stretch = { from: 5 * RATE + 17, to: 8 * RATE + 3 }
    await trace(tracerOf(stretch), chain)
    expectLanes(chain, stretch)
    const first = Math.min(...come.flat().map(({ firstHop }) => firstHop))
    expect(first).toBe(Math.floor(stretch.from / TRACE_HOP_FRAMES))
  })

  it('come a piece further however often a hand moves, and are then of the newest setting all around', async () => {
    const tracer = tracerOf(WHOLE)
    for (let move = 1; move <= PIECES; move++) {
      await trace(tracer, chain, 1)
      expect(come).toHaveLength(move)
    }
    expectLanes(chain, WHOLE)
    const moved = chainOf(
      chain.stages.map((stage) =>
        stage.id === LANES[0] && stage.kind === 'compressor'
          ? { ...stage, settings: { ...stage.settings, ratio: 12 } }
          : stage,
      ),
    )
    await trace(tracer, chain, 2)
    come = []
    await trace(tracer, moved)
    expect(come[0]?.[0]?.firstHop).toBe((2 * PIECE_FRAMES) / TRACE_HOP_FRAMES)
    expectLanes(moved, WHOLE)
  })

  it('are none where no stage reduces gain', async () => {
    await trace(tracerOf(WHOLE), chainOf([stageWith('equaliser', {}, 'low')]))
    expect(come.flat()).toEqual([])
  })
})
