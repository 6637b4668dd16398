import fc from 'fast-check'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { Compute } from '../../src/compute/compute'
import { Pool } from '../../src/compute/pool/pool'
import { nextTask } from '../../src/compute/port/next-task'
import {
  type ChainDoc,
  type Comparison,
  chainOf,
  comparisonOf,
  excerpt,
  type FrameRange,
  frameCount,
  longTermSpectrum,
  measure,
  noiseFloorDbfs,
  pausesOf,
  pausesWithin,
  reductionSummary,
  renderChain,
  type Sound,
  sibilantEvents,
  sibilantsWithin,
} from '../../src/core'
import { startingChain } from '../../src/demo'
import { stageWith } from '../setup/chains'
import { factHere, hashed, memoryOf } from '../setup/evidence-here'
import { chains, SEED } from '../setup/random-chains'
import { noise } from '../setup/signals'
import { sungDemo } from '../setup/sung-demo'
import { WorkersHere } from '../setup/workers-here'

const RATE = 8000
const take = noise(RATE, 5, 1, 3, (at) => (at < 2 ? 0.5 : at < 4 ? 0.0005 : 0.1))
const hold = (thresholdDb: number) => stageWith('compressor', { thresholdDb, ratio: 4 }, 'hold')
const chainAt = (thresholdDb: number): ChainDoc =>
  chainOf([hold(thresholdDb), stageWith('gain', { gainDb: -3 }, 'level')])
const compared = (chain: ChainDoc): Comparison => comparisonOf(chain, { kind: 'chain' })

/** A range cut out of the take behind stages, measured at the take's own pauses and sibilants. */
function measuredCut(sound: Sound, chain: ChainDoc, range: FrameRange) {
  const cut = excerpt(renderChain(sound, chain).sound, range.from, range.to)
  const pauses = pausesOf(sound)
  const sibilants = sound.sampleRate < 10_500 ? [] : sibilantEvents(sound)
  return {
    cut,
    measures: measure(cut, {
      pauses: pauses && pausesWithin(pauses, range, sound.sampleRate),
      sibilants: sibilantsWithin(sibilants, range, sound.sampleRate),
    }),
  }
}

describe(`facts over a range (seed ${SEED})`, () => {
  it('are those of the sound cut out', () => {
    const ranges = fc.tuple(fc.nat(4 * RATE), fc.integer({ min: 800, max: 4 * RATE }))
    fc.assert(
      fc.property(chains(undefined, { minLength: 0, maxLength: 3 }), ranges, (chain, [from, length]) => {
        const range = { from, to: Math.min(frameCount(take), from + length) }
        const on = chainOf(chain.stages.filter(({ on }) => on))
        const { cut, measures } = measuredCut(take, on, range)
        const memory = memoryOf(hashed(take))
        expect(factHere(memory, chain.stages, 'measures', range)).toEqual(measures)
        expect(factHere(memory, chain.stages, 'spectrum', range)).toEqual(longTermSpectrum(cut))
      }),
      { seed: SEED, numRuns: 20 },
    )
  })

  it('of gain reduction are those of the trace between its ends', () => {
    const range = { from: 3 * 128, to: 90 * 128 }
    const { traces } = renderChain(take, chainAt(-30))
    const gainDb = traces.get('hold')?.gainDb.slice(3, 90) ?? new Float32Array()
    const memory = memoryOf(hashed(take))
    const found = factHere(memory, [hold(-30)], 'reduction', range)
    expect(found).toEqual(reductionSummary({ hopFrames: 128, gainDb }))
    expect(found?.maxDb).toBeGreaterThan(1)
    // Where the take is silent nothing is reduced.
    const silent = { from: 3 * RATE, to: 3.5 * RATE }
    expect(factHere(memory, [hold(-30)], 'reduction', silent)).toEqual({ maxDb: 0, medianDb: 0 })
    expect(factHere(memory, [], 'reduction', range)).toBeNull()
  })

  it('keep to the pauses and sibilants of the take: a loop without a pause has no noise floor', () => {
    const memory = memoryOf(hashed(take))
    const floorOver = (from: number, to: number) =>
      factHere(memory, [], 'measures', { from: from * RATE, to: to * RATE }).noiseFloorDbfs
    expect(floorOver(0, 2)).toBeNull()
    expect(floorOver(1.013, 4.4)).toBeCloseTo(noiseFloorDbfs(take) ?? Number.NaN, 1)
  })

  it('of the demo’s loudest phrase say so, with its own sibilants', () => {
    const { vocal } = sungDemo()
    const { sampleRate } = vocal
    const range = { from: Math.round(12.5 * sampleRate), to: 18 * sampleRate }
    const memory = memoryOf(hashed(vocal))
    const { stages } = startingChain()
    expect(factHere(memory, stages, 'measures', range)).toEqual(
      measuredCut(vocal, startingChain(), range).measures,
    )
    const whole = factHere(memory, stages, 'measures')
    const loop = factHere(memory, stages, 'measures', range)
    expect(loop.integratedLufs).toBeGreaterThan((whole.integratedLufs ?? 0) + 1)
    expect(loop.sibilanceDb).not.toBeNull()
  })
})

describe('evidence of a loop', () => {
  const loop = { from: RATE / 2, to: 4 * RATE }
  let workers: WorkersHere
  let pool: Pool
  let compute: Compute
  const quiet = { onProgress() {}, onLiveTraces() {}, onTracesOver() {} }
  const jobs = () => workers.asked.flatMap((message) => (message.type === 'job' ? [message] : []))

  beforeEach(async () => {
    workers = new WorkersHere()
    pool = new Pool(workers.make, 2)
    compute = new Compute(pool)
    await compute.setTake(take)
  })
  afterEach(() => {
    pool.end()
    workers.end()
  })

  it('has both sides and what each stage reduced, behind everything else', async () => {
    const comparison = compared(chainAt(-30))
    const found = await compute.loopEvidence(comparison, loop)
    expect(found?.bypassed.measures).toEqual(measuredCut(take, chainOf([]), loop).measures)
    expect(found?.processed.measures).toEqual(measuredCut(take, chainAt(-30), loop).measures)
    expect([...(found?.reductions.keys() ?? [])]).toEqual(['hold'])
    expect(found).toMatchObject({ range: loop, chains: comparison })
    expect(jobs().at(-1)?.priority).toBe('study')
  })

  it('seen before comes at once and without a message', async () => {
    const first = await compute.loopEvidence(compared(chainAt(-30)), loop)
    await compute.loopEvidence(compared(chainAt(-30)), { from: 0, to: RATE })
    const { length } = jobs()
    expect(await compute.loopEvidence(compared(chainAt(-30)), { ...loop })).toEqual(first)
    expect(jobs()).toHaveLength(length)
  })

  it('of a loop that moves on is not worked out, nor of a chain that changes', async () => {
    const { length } = jobs()
    const moved = [1, 2, 3].map((tenths) =>
      compute.loopEvidence(compared(chainAt(-30)), { from: tenths * 800, to: 4 * RATE }),
    )
    expect((await Promise.all(moved)).map((found) => found !== null)).toEqual([false, false, true])
    expect(jobs()).toHaveLength(length + 1)
    const left = compute.loopEvidence(compared(chainAt(-20)), loop)
    while (jobs().length < length + 2) await nextTask()
    await compute.evidence({ comparison: compared(chainAt(-25)), loop, live: null }, quiet)
    expect(await left).toBeNull()
  })
})
