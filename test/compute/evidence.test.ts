import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Evidence } from '../../../src/compute/evidence'
import { type EvidenceCache, workOutEvidence } from '../../../src/compute/evidence/work-out'
import { matchingGains } from '../../../src/compute/select/matching'
import {
  bypassed,
  type ChainDoc,
  chainOf,
  type FrameRange,
  integratedLoudness,
  longTermSpectrum,
  loudnessOverTime,
  measure,
  pausesOf,
  peakPyramid,
  reductionSummary,
  renderChain,
  type Sound,
  sibilantEvents,
} from '../../../src/core'
import { stageWith } from '../../setup/chains'
import { chains, SEED } from '../../setup/random-chains'
import { noise } from '../../setup/signals'

const RATE = 8000
const take = noise(RATE, 2, 1, 3, (at) => (at < 1 ? 0.5 : 0.05))

const low = stageWith('equaliser', {}, 'low')
const hold = stageWith('compressor', { thresholdDb: -30, ratio: 4, lookaheadMs: 2 }, 'hold')
const colour = stageWith('saturator', { driveDb: 6 }, 'colour')
const level = stageWith('gain', { gainDb: -3 }, 'level')
const chain = chainOf([low, hold, colour, level])

function workedOut(
  chains: { bypassed: ChainDoc; processed: ChainDoc },
  cache: EvidenceCache | null = null,
  loop: FrameRange | null = null,
  sound = take,
) {
  const steps = workOutEvidence(sound, chains, loop, cache)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

/** The same, each figure worked out on its own from renders of its own. */
function direct(chains: { bypassed: ChainDoc; processed: ChainDoc }, loop: FrameRange | null): Evidence {
  const side = (sound: Sound) => ({
    measures: measure(sound, { pauses: pausesOf(take) }),
    loudness: loudnessOverTime(sound),
    peaks: peakPyramid(sound),
    spectrum: longTermSpectrum(sound),
  })
  const bypassed = renderChain(take, chains.bypassed).sound
  const { sound, traces } = renderChain(take, chains.processed)
  const loudnessBehind = chains.processed.stages.map((_, k) => {
    const upTo = { ...chains.processed, stages: chains.processed.stages.slice(0, k + 1) }
    return integratedLoudness(renderChain(take, upTo).sound)
  })
  const stages = chains.processed.stages.map(({ id }, k) => {
    const trace = traces.get(id) ?? null
    const [before, behind] = [k === 0 ? integratedLoudness(take) : loudnessBehind[k - 1], loudnessBehind[k]]
    const change = typeof before === 'number' && typeof behind === 'number' ? behind - before : null
    const found = { loudnessChangeLu: change, reduction: trace && reductionSummary(trace), trace }
    return [id, found] as const
  })
  return {
    bypassed: side(bypassed),
    processed: side(sound),
    stages: new Map(stages),
    matching: matchingGains(bypassed, sound, loop),
    chains,
  }
}

/** Hissing every second for 0.2 s: noise differentiated twice, which leaves its top, as in S. */
const hissing = noise(44_100, 4, 1, 3, (at) => (at % 1 < 0.2 ? 0.05 : 0))
const sung = {
  sampleRate: 44_100,
  channels: hissing.channels.map((samples) =>
    samples.map((x, n) => {
      const hiss = x - 2 * (samples[n - 1] ?? 0) + (samples[n - 2] ?? 0)
      return n % 44_100 < 0.2 * 44_100 ? hiss : 0.2 * Math.sin(n / 20)
    }),
  ),
}

const wholeChain = (doc: ChainDoc) => ({ bypassed: bypassed(doc), processed: doc })

describe('evidence worked out in steps', () => {
  it('looks for sibilants in the take, and measures both sides there, however much is held back of them', () => {
    const held = stageWith(
      'de-esser',
      { thresholdDb: -80, ratio: 20, rangeDb: 40, releaseMs: 5, band: 'all' },
      'held',
    )
    const { evidence } = workedOut(wholeChain(chainOf([held])), null, null, sung)
    const sibilants = sibilantEvents(sung)
    const { sound } = renderChain(sung, chainOf([held]))
    expect(sibilants).toHaveLength(4)
    expect(evidence.processed.measures.sibilanceDb).toBe(measure(sound, { sibilants }).sibilanceDb)
    const [bypassed, processed] = [
      evidence.bypassed.measures.sibilanceDb,
      evidence.processed.measures.sibilanceDb,
    ]
    expect((bypassed ?? 0) - (processed ?? 0)).toBeGreaterThan(10)
  })

  it.each([null, { from: 800, to: 7200 }, { from: 0, to: 100 }])(
    'is what direct computation gives, matched over the loop %o',
    (loop) => {
      expect(workedOut(wholeChain(chain), null, loop).evidence).toEqual(direct(wholeChain(chain), loop))
    },
  )

  it('is the same whatever was worked out before it', () => {
    const histories = fc.array(chains(undefined, { maxLength: 3 }), { minLength: 2, maxLength: 4 })
    fc.assert(
      fc.property(histories, (history) => {
        let cache: EvidenceCache | null = null
        for (const doc of history) {
          const worked = workedOut(wholeChain(doc), cache)
          expect(worked.evidence).toEqual(workedOut(wholeChain(doc)).evidence)
          cache = worked.cache
        }
      }),
      { seed: SEED, numRuns: 15 },
    )
  })

  it('is not spoilt by work that was given up half way', () => {
    const first = workedOut(wholeChain(chain))
    const changed = chainOf([low, { ...hold, settings: { ...hold.settings, ratio: 8 } }, colour, level])
    for (let steps = 1; steps < 6; steps++) {
      const abandoned = workOutEvidence(take, wholeChain(changed), null, first.cache)
      for (let i = 0; i < steps; i++) abandoned.next()
      expect(workedOut(wholeChain(chain), first.cache).evidence).toEqual(first.evidence)
    }
  })

  it('is the very object that it was where nothing has changed', () => {
    const first = workedOut(wholeChain(chain))
    const louder = { ...level, settings: { ...level.settings, gainDb: 0 } }
    const { evidence } = workedOut(
      { bypassed: bypassed(chain), processed: chainOf([low, hold, colour, louder]) },
      first.cache,
    )
    expect(evidence.bypassed).toBe(first.evidence.bypassed)
    expect(evidence.processed).not.toBe(first.evidence.processed)
    expect(evidence.stages.get('hold')?.trace).toBe(first.evidence.stages.get('hold')?.trace)
  })

  it('counts a stage that is off as changing nothing, without measuring behind it', () => {
    // Off, it still is a place on the way whose samples lie elsewhere: they are shifted by its lookahead.
    const off = { ...hold, on: false }
    const doc = chainOf([low, off, colour, { ...level, on: false }])
    const { evidence, cache } = workedOut(wholeChain(doc))
    expect(evidence).toEqual(direct(wholeChain(doc), null))
    expect(evidence.stages.get('hold')).toEqual({ loudnessChangeLu: 0, reduction: null, trace: null })
    expect(evidence.stages.get('level')?.loudnessChangeLu).toBe(0)
    expect(evidence.stages.get('colour')?.loudnessChangeLu).not.toBeCloseTo(0, 1)
    // The take, behind the equaliser, and behind the saturator, which is the end.
    expect(cache.tapLoudness.size).toBe(3)
  })

  it('measures the noise floor of both sides where the take pauses, muted stretches left out', () => {
    // Filters ring on into what was muted: their own quietest moments would be there.
    const muted = noise(RATE, 6, 1, 3, (at) => (at < 2 ? 0 : at < 4 ? 0.001 : at < 5 ? 0.3 : 0))
    const quieter = stageWith('gain', { gainDb: -6 }, 'level')
    const warm = stageWith('saturator', { driveDb: 0, mix: 0.5 }, 'warm')
    const { evidence } = workedOut(wholeChain(chainOf([warm, quieter])), null, null, muted)
    const [before, after] = [evidence.bypassed, evidence.processed].map(
      ({ measures }) => measures.noiseFloorDbfs,
    )
    expect(before).toBeCloseTo(measure(muted).noiseFloorDbfs ?? 0, 9)
    // So faint a sound passes the curve as it is; its oversampling and DC filter take less than a tenth of a dB.
    expect(Math.abs((after ?? 0) - (before ?? 0) + 6)).toBeLessThan(0.1)
  })

  it('is not built on another take', () => {
    const other = noise(RATE, 2, 1, 4, () => 0.1)
    const { cache } = workedOut(wholeChain(chain), null, null, other)
    expect(workedOut(wholeChain(chain), cache).evidence).toEqual(workedOut(wholeChain(chain)).evidence)
  })
})
