import { beforeEach, describe, expect, it } from 'vitest'
import type { StretchTrace } from '../../../src/audio/evidence/evidence'
import type { FrameRange } from '../../../src/audio/evidence/matching'
import { LiveLanes, PIECE_FRAMES } from '../../../src/audio/worker/live-lanes'
import { type ChainDoc, chainOf, frameCount, renderChain, TRACE_HOP_FRAMES } from '../../../src/core'
import { stageWith } from '../../setup/chains'
import { noise } from '../../setup/signals'

const RATE = 44_100
const take = noise(RATE, 14, 1, 5, (at) => 0.02 + 0.4 * Math.sin(at * at * 2) ** 2)
const WHOLE = { from: 0, to: frameCount(take) }
const PIECES = Math.ceil(WHOLE.to / PIECE_FRAMES)

const chain = chainOf([
  stageWith('equaliser', {}, 'low'),
  stageWith('compressor', { thresholdDb: -30, ratio: 4, lookaheadMs: 5, releaseMs: 200 }, 'hold'),
  stageWith('saturator', { driveDb: 6 }, 'colour'),
  stageWith('compressor', { thresholdDb: -24, ratio: 2 }, 'even'),
  { ...stageWith('compressor', { thresholdDb: -60 }, 'off'), on: false },
  stageWith('de-esser', { thresholdDb: -40, rangeDb: 12 }, 'soften'),
  stageWith('gain', { gainDb: -3 }, 'level'),
])
const LANES = ['hold', 'even', 'soften']

/** A picture of 24 dB over 32 pixels does not show this much, dB. */
const NOT_SEEN_DB = 0.05

let lanes: LiveLanes
let come: StretchTrace[]
beforeEach(() => {
  lanes = new LiveLanes()
  come = []
})

/** @param pieces after which something newer is known; none for never */
async function trace(doc: ChainDoc, stretch: FrameRange, pieces = Number.POSITIVE_INFINITY): Promise<void> {
  let left = pieces
  const goOn = { isNewest: () => --left > 0, stands: () => true }
  await lanes.trace({ sound: take, stages: doc.stages }, stretch, goOn, (one) => come.push(one))
}

/** How far what has come of a lane, the last of each place, is from its trace in a render, dB at most. */
function furthest(doc: ChainDoc, stageId: string, { from, to }: FrameRange): number {
  const rendered = renderChain(take, doc).traces.get(stageId)?.gainDb ?? new Float32Array(0)
  const drawn = new Float32Array(rendered.length).fill(Number.NaN)
  for (const { firstHop, gainDb } of come.filter((one) => one.stageId === stageId))
    drawn.set(gainDb, firstHop)
  let most = 0
  for (let hop = Math.floor(from / TRACE_HOP_FRAMES); hop < Math.ceil(to / TRACE_HOP_FRAMES); hop++)
    most = Math.max(most, Math.abs((drawn[hop] ?? Number.NaN) - (rendered[hop] ?? 0)))
  return most
}

describe('lanes that follow a hand', () => {
  it('are those of a render to within what can be seen, one lane after the other', async () => {
    await trace(chain, WHOLE)
    for (const id of LANES) expect(furthest(chain, id, WHOLE)).toBeLessThan(NOT_SEEN_DB)
    expect(come.map(({ stageId }) => stageId)).toEqual(LANES.flatMap((id) => Array(PIECES).fill(id)))
  })

  it('are right in a stretch somewhere in the take', async () => {
    const stretch = { from: 5 * RATE + 17, to: 8 * RATE + 3 }
    await trace(chain, stretch)
    for (const id of LANES) expect(furthest(chain, id, stretch)).toBeLessThan(NOT_SEEN_DB)
  })

  it('all come further however often a hand moves, each a piece behind the one before it at first', async () => {
    const places = (id: string) => come.filter((one) => one.stageId === id).map(({ firstHop }) => firstHop)
    for (let move = 1; move < PIECES; move++) {
      await trace(chain, WHOLE, 1)
      for (const [k, id] of LANES.entries()) {
        expect(places(id)).toHaveLength(Math.max(0, move - k))
        expect(places(id)).toEqual(places('hold').slice(0, places(id).length))
      }
    }
    for (const _ of LANES) await trace(chain, WHOLE, 1)
    for (const id of LANES) expect(furthest(chain, id, WHOLE)).toBeLessThan(NOT_SEEN_DB)
  })

  it('are of the newest setting once it has gone round, the lanes behind it too', async () => {
    await trace(chain, WHOLE, 2)
    const moved = chainOf(
      chain.stages.map((stage) =>
        stage.id === 'hold' && stage.kind === 'compressor'
          ? { ...stage, settings: { ...stage.settings, ratio: 12 } }
          : stage,
      ),
    )
    come = []
    await trace(moved, WHOLE)
    for (const id of LANES) expect(furthest(moved, id, WHOLE)).toBeLessThan(NOT_SEEN_DB)
  })

  it('begin anew where the path or the stretch is another', async () => {
    await trace(chain, WHOLE, 2)
    const shorter = chainOf(chain.stages.filter(({ id }) => id !== 'hold'))
    const early = { from: 0, to: 4 * RATE }
    for (const [doc, stretch, ids] of [
      [chain, early, LANES],
      [shorter, early, ['even', 'soften']],
      [shorter, WHOLE, ['even', 'soften']],
    ] as const) {
      come = []
      await trace(doc, stretch)
      for (const id of ids) expect(furthest(doc, id, stretch)).toBeLessThan(NOT_SEEN_DB)
    }
  })

  it('are none where no stage reduces gain', async () => {
    await trace(chainOf([stageWith('equaliser', {}, 'low')]), WHOLE)
    expect(come).toEqual([])
  })
})
