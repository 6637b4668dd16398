import { describe, expect, it } from 'vitest'
import {
  type ChainDoc,
  chainOf,
  comparisonOf,
  defaultStage,
  idleChain,
  renderDifference,
  stageKinds,
} from '../../../src/core'
import { startingChain } from '../../../src/demo'
import { band, equaliserWith, stageWith } from '../../setup/chains'
import { heard, largestStep, listenTo, warmEngine } from '../../setup/engine'
import { sungDemo } from '../../setup/sung-demo'

const RATE = 48_000

/** An equaliser and a compressor at work in front, and behind: neither may leak into what one stage removed. */
function amongOthers(stage: ChainDoc['stages'][number]): ChainDoc {
  const { stages } = startingChain()
  const working = stages.filter(({ kind }) => kind === 'equaliser' || kind === 'compressor')
  return chainOf([
    ...working.map((other) => ({ ...other, id: `before ${other.id}` })),
    stage,
    defaultStage('saturator', 'behind'),
    ...working.map((other) => ({ ...other, id: `behind ${other.id}` })),
  ])
}

/** One stage of each kind with nothing to do. */
const inactive = [
  stageWith('equaliser', { bands: [] }, 'test'),
  stageWith('compressor', { thresholdDb: 0, ratio: 1, makeupDb: 0, lookaheadMs: 5 }, 'test'),
  stageWith('de-esser', { thresholdDb: 0, rangeDb: 12 }, 'test'),
  stageWith('de-esser', { rangeDb: 0, band: 'all' }, 'test'),
  stageWith('saturator', { mix: 0 }, 'test'),
  stageWith('gain', { gainDb: 0 }, 'test'),
]

function peakOf(samples: Float32Array): number {
  return samples.reduce((peak, sample) => Math.max(peak, Math.abs(sample)), 0)
}

describe('only what one stage removed, while it plays', () => {
  const { vocal } = sungDemo()

  it.each(inactive)(
    '$kind with nothing to do: digital silence, also right behind a switch to it',
    (stage) => {
      const chain = amongOthers(stage)
      const engine = warmEngine(vocal.channels, listenTo(chain), RATE)
      engine.play(0)
      // From comparing the whole chain, whose side "without" has quite another past.
      expect(peakOf(heard(engine, 3 * RATE))).toBeGreaterThan(0.01)
      engine.set(listenTo(chain, { heard: 'difference', differenceStageId: stage.id }))
      heard(engine, 0.03 * RATE)
      expect(peakOf(heard(engine, 3 * RATE))).toBe(0)
    },
  )

  it.each(startingChain().stages)('$kind of the starting chain: as the offline render has it', ({ id }) => {
    const chain = startingChain()
    const engine = warmEngine(
      vocal.channels,
      listenTo(chain, { heard: 'difference', differenceStageId: id }),
      RATE,
    )
    heard(engine, RATE)
    engine.play(0)
    const output = heard(engine, 6 * RATE)
    const delay = Math.round(0.01 * RATE)
    const offline = renderDifference(vocal, chain, id).channels[0] ?? new Float32Array()
    expect(peakOf(offline.subarray(2 * RATE, 6 * RATE))).toBeGreaterThan(0.001)
    // From behind the fade-in of the start on, once the compressor has forgotten it.
    for (let n = 2 * RATE; n < 6 * RATE; n += 31) expect(output[n]).toBeCloseTo(offline[n - delay] ?? 0, 5)
  })

  it('of a stage that is switched off: digital silence', () => {
    const chain = amongOthers({ ...stageWith('gain', { gainDb: -6 }, 'test'), on: false })
    const engine = warmEngine(
      vocal.channels,
      listenTo(chain, { heard: 'difference', differenceStageId: 'test' }),
      RATE,
    )
    engine.play(0)
    expect(peakOf(heard(engine, 3 * RATE))).toBe(0)
  })

  it.each(['bell', 'low-shelf', 'high-shelf'] as const)(
    'of a band, a %s at 0 dB among others at work: digital silence, also once it has come down from 9 dB',
    (shape) => {
      const chainAt = (gainDb: number) => {
        const low = band({ frequencyHz: 300, gainDb: -4, q: 1.3 })
        const bands = [
          low,
          band({ shape, frequencyHz: 3000, gainDb }),
          band({ frequencyHz: 6000, gainDb: 5 }),
        ]
        return amongOthers({ ...equaliserWith(bands), id: 'test' })
      }
      const settingsAt = (gainDb: number) => {
        const chain = chainAt(gainDb)
        const compared = comparisonOf(chain, { kind: 'band', stageId: 'test', bandIndex: 1 })
        return listenTo(chain, { ...compared, heard: 'difference' })
      }
      const engine = warmEngine(vocal.channels, settingsAt(0), RATE)
      engine.play(0)
      expect(peakOf(heard(engine, 3 * RATE))).toBe(0)
      engine.set(settingsAt(9))
      expect(peakOf(heard(engine, 2 * RATE))).toBeGreaterThan(0.01)
      engine.set(settingsAt(0))
      // The stages behind it forget what they held back as slowly as they release.
      heard(engine, 12 * RATE)
      expect(peakOf(heard(engine, 3 * RATE))).toBe(0)
    },
  )

  it('of the whole chain, one of each kind with nothing to do: digital silence, also right behind a switch to it', () => {
    const chain = chainOf(inactive.map((stage, index) => ({ ...stage, id: `stage ${index}` })))
    expect(new Set(chain.stages.map(({ kind }) => kind))).toEqual(new Set(stageKinds))
    const engine = warmEngine(vocal.channels, listenTo(chain), RATE)
    engine.play(0)
    expect(peakOf(heard(engine, 3 * RATE))).toBeGreaterThan(0.01)
    engine.set(listenTo(chain, { bypassed: idleChain(chain), heard: 'difference' }))
    heard(engine, 0.03 * RATE)
    expect(peakOf(heard(engine, 5 * RATE))).toBe(0)
  })

  it('changes from stage to stage, and to the whole chain, without a click', () => {
    const frequencyHz = 220
    const tone = Float32Array.from(
      { length: 5 * RATE },
      (_, n) => 0.5 * Math.sin((2 * Math.PI * frequencyHz * n) / RATE),
    )
    const chain = chainOf([
      stageWith('gain', { gainDb: -3 }, 'first'),
      stageWith('saturator', { driveDb: 0, outputDb: -6 }, 'second'),
    ])
    const engine = warmEngine([tone], listenTo(chain, { heard: 'difference' }), RATE)
    engine.play(0)
    const stages = ['first', 'second', null, 'second', 'first', null]
    const output = heard(engine, 3 * RATE, (frame) => {
      if (frame % 24_064 !== 0) return
      const differenceStageId = stages[(frame / 24_064) % stages.length] ?? null
      engine.set(listenTo(chain, { heard: 'difference', differenceStageId }))
    })
    const toneStep = 0.5 * 2 * Math.sin((Math.PI * frequencyHz) / RATE)
    expect(peakOf(output)).toBeGreaterThan(0.2)
    expect(largestStep(output, RATE / 10)).toBeLessThan(toneStep + 0.5 / (0.015 * RATE))
  })
})
