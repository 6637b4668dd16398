import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Evidence } from '../../src/compute/evidence'
import { FactStore } from '../../src/compute/facts/fact-store'
import { matchingGains } from '../../src/compute/select/matching'
import { EvidenceSelector, missingFrom, wantsOf } from '../../src/compute/select/select-evidence'
import {
  bypassed,
  type Comparison,
  chainOf,
  comparisonOf,
  type FrameRange,
  measure,
  renderChain,
  type Scope,
  type Sound,
  sibilantEvents,
} from '../../src/core'
import { stageWith } from '../setup/chains'
import { directFact } from '../setup/direct-facts'
import { evidenceHere, factsHere, hashed, memoryOf } from '../setup/evidence-here'
import { chains, SEED } from '../setup/random-chains'
import { sideLoudness } from '../setup/side-loudness'
import { noise } from '../setup/signals'

const RATE = 8000
const take = noise(RATE, 2, 1, 3, (at) => (at < 1 ? 0.5 : 0.05))

const low = stageWith('equaliser', {}, 'low')
const hold = stageWith('compressor', { thresholdDb: -30, ratio: 4, lookaheadMs: 2 }, 'hold')
const colour = stageWith('saturator', { driveDb: 6 }, 'colour')
const level = stageWith('gain', { gainDb: -3 }, 'level')
const chain = chainOf([low, hold, colour, level])
const whole = (doc = chain): Comparison => ({ bypassed: bypassed(doc), processed: doc })

/** The same, each figure worked out on its own from renders of its own. */
function direct(comparison: Comparison, loop: FrameRange | null): Evidence {
  const side = ({ stages }: Comparison['processed']) => ({
    measures: directFact(take, stages, 'measures'),
    loudness: directFact(take, stages, 'loudness'),
    peaks: directFact(take, stages, 'peaks'),
    spectrum: directFact(take, stages, 'spectrum'),
  })
  const loudness = (doc: Comparison['processed']) =>
    sideLoudness(renderChain(take, chainOf(doc.stages.filter(({ on }) => on))).sound)
  const { stages } = comparison.processed
  const lufs = [...stages, null].map((_, k) => directFact(take, stages.slice(0, k), 'integratedLufs'))
  const found = stages.map(({ id, on }, k) => {
    const [before = null, behind = null] = lufs.slice(k, k + 2)
    const loudnessChangeLu = before === null || behind === null ? null : behind - before
    const upTo = stages.slice(0, k + 1)
    const reduction = on ? directFact(take, upTo, 'reduction') : null
    return [
      id,
      {
        integratedLufs: behind,
        loudnessChangeLu,
        reduction,
        trace: on ? directFact(take, upTo, 'trace') : null,
      },
    ] as const
  })
  return {
    bypassed: side(comparison.bypassed),
    processed: side(comparison.processed),
    stages: new Map(found),
    matching: matchingGains(loudness(comparison.bypassed), loudness(comparison.processed), loop, RATE),
    chains: comparison,
  }
}

describe(`evidence (seed ${SEED})`, () => {
  it('is what renders and measures give, of any chain, scope and loop', () => {
    const asked = fc.record({
      doc: chains(undefined, { minLength: 1, maxLength: 3 }),
      stage: fc.option(fc.nat(2)),
      loop: fc.constantFrom(null, { from: 800, to: 7200 }, { from: 0, to: 100 }),
    })
    fc.assert(
      fc.property(asked, ({ doc, stage, loop }) => {
        const stageId = stage === null ? undefined : doc.stages[stage % doc.stages.length]?.id
        const scope: Scope = stageId === undefined ? { kind: 'chain' } : { kind: 'stage', stageId }
        const comparison = comparisonOf(doc, scope)
        expect(evidenceHere(take, comparison, loop)).toEqual(direct(comparison, loop))
      }),
      { seed: SEED, numRuns: 25 },
    )
  })

  it('counts a stage that is off as changing nothing, without measuring behind it', () => {
    // Off, it still delays in a render of the chain: what differs by that is beyond hearing.
    const doc = chainOf([low, { ...hold, on: false }, colour, { ...level, on: false }])
    const evidence = evidenceHere(take, whole(doc))
    const before = evidence.stages.get('low')?.integratedLufs
    expect(evidence.stages.get('hold')).toEqual({
      integratedLufs: before,
      loudnessChangeLu: 0,
      reduction: null,
      trace: null,
    })
    expect(evidence.stages.get('level')?.loudnessChangeLu).toBe(0)
    expect(evidence.stages.get('colour')?.loudnessChangeLu).not.toBeCloseTo(0, 1)
    expect(evidence.processed.measures.integratedLufs).toBeCloseTo(
      measure(renderChain(take, doc).sound).integratedLufs ?? Number.NaN,
      9,
    )
    // The take, behind the equaliser, and behind the saturator, which is the end.
    expect(wantsOf(doc, true).map(({ stages }) => stages.length)).toEqual([0, 1, 3])
  })

  it('measures sibilance of both sides where the take has it, however much is reduced there', () => {
    // Hissing every second for 0.2 s: noise differentiated twice, which leaves its top, as in S.
    const hissing = noise(44_100, 4, 1, 3, (at) => (at % 1 < 0.2 ? 0.05 : 0))
    const hiss = (samples: Float32Array, x: number, n: number) =>
      x - 2 * (samples[n - 1] ?? 0) + (samples[n - 2] ?? 0)
    const sung: Sound = {
      sampleRate: 44_100,
      channels: hissing.channels.map((samples) =>
        samples.map((x, n) => (n % 44_100 < 0.2 * 44_100 ? hiss(samples, x, n) : 0.2 * Math.sin(n / 20))),
      ),
    }
    const settings = { thresholdDb: -80, ratio: 20, rangeDb: 40, releaseMs: 5, band: 'all' } as const
    const doc = chainOf([stageWith('de-esser', settings, 'reduced')])
    const evidence = evidenceHere(sung, whole(doc))
    const sibilants = sibilantEvents(sung)
    expect(sibilants).toHaveLength(4)
    const { sound } = renderChain(sung, doc)
    expect(evidence.processed.measures.sibilanceDb).toBe(measure(sound, { sibilants }).sibilanceDb)
    const [before, behind] = [evidence.bypassed.measures.sibilanceDb, evidence.processed.measures.sibilanceDb]
    expect((before ?? 0) - (behind ?? 0)).toBeGreaterThan(10)
  })

  it('measures the noise floor of both sides where the take pauses, muted stretches left out', () => {
    // Filters ring on into what was muted: their own quietest moments would be there.
    const muted = noise(RATE, 6, 1, 3, (at) => (at < 2 ? 0 : at < 4 ? 0.001 : at < 5 ? 0.3 : 0))
    const doc = chainOf([stageWith('saturator', { driveDb: 0, mix: 0.5 }), stageWith('gain', { gainDb: -6 })])
    const evidence = evidenceHere(muted, whole(doc))
    const [before, behind] = [evidence.bypassed, evidence.processed].map(
      ({ measures }) => measures.noiseFloorDbfs,
    )
    expect(before).toBeCloseTo(measure(muted).noiseFloorDbfs ?? 0, 9)
    // So faint a sound passes the curve as it is; its oversampling and DC filter take less than a tenth of a dB.
    expect(Math.abs((behind ?? 0) - (before ?? 0) + 6)).toBeLessThan(0.1)
  })
})

describe('what is selected from facts', () => {
  it('is nothing while one of them is missing, and the very same parts where the sounds are the same', () => {
    const memory = memoryOf(hashed(take))
    const hash = memory.take?.hash ?? ''
    const facts = new FactStore(2 ** 26)
    const selector = new EvidenceSelector(facts)
    const known = { hash, sound: take }
    const learn = (comparison: Comparison) => {
      const wants = missingFrom(facts, hash, [
        ...wantsOf(comparison.processed, true),
        ...wantsOf(comparison.bypassed, false),
      ])
      for (const { want, name, value } of factsHere(memory, wants)) {
        expect(selector.select(known, comparison, null)).toBeNull()
        facts.put({ take: hash, stages: wants[want]?.stages ?? [] }, name, value)
      }
      return selector.select(known, comparison, null)
    }
    const first = learn(whole())
    expect(first).not.toBeNull()
    const louder = chainOf([low, hold, colour, { ...level, settings: { gainDb: 0 } }])
    const second = learn({ bypassed: bypassed(chain), processed: louder })
    expect(second?.bypassed).toBe(first?.bypassed)
    expect(second?.processed).not.toBe(first?.processed)
    expect(second?.stages.get('hold')?.trace).toBe(first?.stages.get('hold')?.trace)
    expect(missingFrom(facts, hash, wantsOf(louder, true))).toEqual([])
  })
})
