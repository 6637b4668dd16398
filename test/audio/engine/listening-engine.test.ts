import { ebur128_integrated_mono } from 'ebur128-wasm'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ListeningEngine } from '../../../src/audio/engine/listening-engine'
import { LIMITER_CEILING } from '../../../src/audio/engine/monitor-limiter'
import { matchingGains } from '../../../src/compute/select/matching'
import { type ChainDoc, chainOf, defaultStage, renderChain, type StageDoc } from '../../../src/core'
import { startingChain } from '../../../src/demo'
import { heard, largestStep, listenTo, warmEngine } from '../../setup/engine'
import { sideLoudness } from '../../setup/side-loudness'
import { mulberry32 } from '../../setup/signals'
import { sungDemo } from '../../setup/sung-demo'

const RATE = 48000

function tone(frequencyHz: number, seconds: number, level = 0.25): Float32Array {
  return Float32Array.from(
    { length: seconds * RATE },
    (_, n) => level * Math.sin((2 * Math.PI * frequencyHz * n) / RATE),
  )
}

function withSettings<Stage extends StageDoc>(stage: Stage, settings: Partial<Stage['settings']>): Stage {
  return { ...stage, settings: { ...stage.settings, ...settings } }
}

const halfLevel = chainOf([withSettings(defaultStage('gain'), { gainDb: -6 })])

/** Everything that delays, with nothing to do: 5 ms of lookahead and a saturator mixed to nothing. */
const neutralButLate: ChainDoc = chainOf([
  withSettings(defaultStage('compressor'), { ratio: 1, lookaheadMs: 5 }),
  withSettings(defaultStage('saturator'), { mix: 0 }),
])

describe('switching between without and with', () => {
  it('100 times at random moments on a steady tone leaves no step larger than tone and crossfade make', () => {
    const frequencyHz = 220
    const engine = warmEngine([tone(frequencyHz, 40)], listenTo(halfLevel), RATE)
    engine.play(0)
    const random = mulberry32(7)
    let side: 'processed' | 'bypassed' = 'processed'
    let next = RATE / 2
    let switches = 0
    const output = heard(engine, 30 * RATE, (frame) => {
      if (frame < next) return
      switches++
      side = side === 'processed' ? 'bypassed' : 'processed'
      engine.set(listenTo(halfLevel, { heard: side }))
      next = frame + 0.05 * RATE + random() * 0.25 * RATE
    })
    // The steepest slope of the louder side, plus the whole difference of the sides spread over 15 ms.
    const toneStep = 0.25 * 2 * Math.sin((Math.PI * frequencyHz) / RATE)
    const crossfadeStep = (0.25 * (1 - 10 ** (-6 / 20))) / (0.015 * RATE)
    expect(largestStep(output, RATE / 10)).toBeLessThan((toneStep + crossfadeStep) * 1.001)
    expect(switches).toBeGreaterThanOrEqual(100)
  })

  it('changing which stages there are, while it plays, makes no click', () => {
    const frequencyHz = 220
    const engine = warmEngine([tone(frequencyHz, 10)], listenTo(halfLevel), RATE)
    engine.play(0)
    const longer = chainOf([...halfLevel.stages, defaultStage('saturator'), defaultStage('compressor')])
    const output = heard(engine, 4 * RATE, (frame) => {
      if (frame % (RATE / 2) < 128)
        engine.set(listenTo(Math.floor(frame / (RATE / 2)) % 2 ? longer : halfLevel))
    })
    const toneStep = 0.25 * 2 * Math.sin((Math.PI * frequencyHz) / RATE)
    expect(largestStep(output, RATE / 10)).toBeLessThan(1.1 * toneStep)
  })

  it('keeps both sides aligned: neutral with lookahead and saturator, with less without is digital silence', () => {
    const take = [sungDemo().vocal.channels[0] ?? new Float32Array()]
    const engine = warmEngine(take, listenTo(neutralButLate, { heard: 'difference' }), RATE)
    engine.play(0)
    const output = heard(engine, 10 * RATE)
    expect(output.reduce((peak, sample) => Math.max(peak, Math.abs(sample)), 0)).toBe(0)
  })

  it('plays the side "with" as the render of the chain, late by its delay', () => {
    const { vocal } = sungDemo()
    const chain = startingChain()
    const engine = warmEngine(vocal.channels, listenTo(chain), RATE)
    heard(engine, RATE)
    engine.play(0)
    const output = heard(engine, 5 * RATE)
    const delay = Math.round(0.01 * RATE)
    const rendered = renderChain(vocal, chain).sound.channels[0] ?? new Float32Array()
    // From behind the fade-in of the start on, once the compressor has forgotten it.
    for (let n = 2 * RATE; n < 5 * RATE; n += 97) expect(output[n]).toBeCloseTo(rendered[n - delay] ?? 0, 5)
  })
})

describe('the playhead', () => {
  const gain = defaultStage('gain', 'level')
  const saturator = defaultStage('saturator', 'warmth')
  const compressor = defaultStage('compressor', 'hold')
  /** Chains of different delays, of the same delay, and one stage set in two ways. */
  const chains: readonly ChainDoc[] = [
    chainOf([gain]),
    chainOf([withSettings(gain, { gainDb: -6 })]),
    chainOf([gain, saturator]),
    chainOf([saturator, gain]),
    chainOf([gain, saturator, compressor]),
    chainOf([gain, saturator, withSettings(compressor, { lookaheadMs: 5 })]),
  ]
  const take = [new Float32Array(8000)]

  it('is where it would be had the chain never been another, however quickly that goes to and fro', () => {
    const edit = fc.record({ chain: fc.nat(chains.length - 1), frames: fc.integer({ min: 0, max: 1200 }) })
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 6 }), (edits) => {
        const engine = new ListeningEngine(take, listenTo(chainOf([])), 8000, 2)
        engine.play(0)
        let played = 0
        for (const { chain, frames } of edits) {
          const settings = listenTo(chains[chain] ?? chainOf([]))
          engine.set(settings)
          heard(engine, frames)
          played += frames
          const steady = new ListeningEngine(take, settings, 8000, 2)
          steady.play(0)
          heard(steady, played)
          expect(engine.positionFrame).toBe(steady.positionFrame)
        }
      }),
      // Undone and done again within the time that a chain of other stages takes to be faded in.
      { examples: [[[2, 4, 2].map((chain) => ({ chain, frames: 200 }))]] },
    )
  })

  it('is that of the sound that is heard, take and backing alike, once it has settled', () => {
    const click = new Float32Array(4 * RATE)
    click[3 * RATE] = 0.5
    const listenWithBacking = (k: number) =>
      listenTo(chains[k] ?? chainOf([]), { backing: { on: true, levelDb: 0, offsetFrames: 0 } })
    const engine = warmEngine([click], listenWithBacking(0), RATE)
    engine.setBacking([click])
    engine.play(0)
    for (const k of [2, 4, 2]) {
      engine.set(listenWithBacking(k))
      heard(engine, 1280)
    }
    const from = engine.positionFrame
    const clicks = [...heard(engine, 4 * RATE)].flatMap((x, n) => (Math.abs(x) > 0.1 ? [from + n] : []))
    expect(clicks).toEqual([3 * RATE])
  })
})

describe('momentary loudness', () => {
  const SECONDS = 2
  const loudnessOf = (take: readonly Float32Array[], backing: readonly Float32Array[]) => {
    const settings = listenTo(chainOf([]), { backing: { on: true, levelDb: 0, offsetFrames: 0 } })
    const engine = warmEngine(take, settings, RATE)
    engine.setBacking(backing)
    engine.play(0)
    heard(engine, SECONDS * RATE)
    return engine.momentaryLufs
  }
  const silence = new Float32Array(SECONDS * RATE)
  const sound = tone(997, SECONDS)

  it('counts both channels of a stereo backing under a mono take, alike', () => {
    const [left, right] = [loudnessOf([silence], [sound, silence]), loudnessOf([silence], [silence, sound])]
    expect(right).toBe(left)
    // A mono take counts as one channel, though both play it: so do both channels of a backing that is the same.
    expect(loudnessOf([silence], [sound, sound])).toBeCloseTo(loudnessOf([sound], []), 6)
    expect(left).toBeCloseTo(loudnessOf([sound], []) - 10 * Math.log10(2), 3)
  })

  it('counts both channels of a stereo take in full, BS.1770', () => {
    expect(loudnessOf([sound, sound], [])).toBeCloseTo(loudnessOf([sound], []) + 10 * Math.log10(2), 3)
    expect(loudnessOf([silence, sound], [])).toBeCloseTo(loudnessOf([sound], []), 3)
  })
})

describe('matched comparison', () => {
  it('puts out two sides whose integrated loudness differs by no more than 0.1 LU (ebur128-wasm)', () => {
    const { vocal } = sungDemo()
    const chain = startingChain()
    const processed = renderChain(vocal, chain).sound
    const { bypassedDb, processedDb } = matchingGains(
      sideLoudness(vocal),
      sideLoudness(processed),
      null,
      vocal.sampleRate,
    )
    const loudnessOf = (side: 'bypassed' | 'processed') => {
      const settings = listenTo(chain, {
        heard: side,
        bypassedGainDb: bypassedDb,
        processedGainDb: processedDb,
        monitorDb: -6,
      })
      const engine = warmEngine(vocal.channels, settings, RATE)
      engine.play(0)
      return ebur128_integrated_mono(RATE, heard(engine, vocal.channels[0]?.length ?? 0))
    }
    expect(Math.abs(loudnessOf('bypassed') - loudnessOf('processed'))).toBeLessThan(0.1)
    expect(Math.max(bypassedDb, processedDb)).toBe(0)
  })
})

describe('care for ears', () => {
  it('holds every output peak at or below -1 dBFS, whatever the settings', () => {
    const loud = chainOf([withSettings(defaultStage('gain'), { gainDb: 24 })])
    const engine = new ListeningEngine([tone(50, 3, 1)], listenTo(loud, { monitorDb: 12 }), RATE, 2)
    engine.play(0)
    const output = heard(engine, 3 * RATE)
    const peak = output.reduce((highest, sample) => Math.max(highest, Math.abs(sample)), 0)
    expect(peak).toBeLessThanOrEqual(Math.fround(LIMITER_CEILING))
    expect(peak).toBeGreaterThan(0.8)
  })

  it('brings the first sound up from silence, and later ones at once', () => {
    const engine = new ListeningEngine([tone(1000, 5)], listenTo(chainOf([])), RATE, 2)
    engine.play(0)
    const first = heard(engine, RATE)
    const peakOf = (samples: Float32Array) => samples.reduce((peak, x) => Math.max(peak, Math.abs(x)), 0)
    expect(peakOf(first.subarray(0, 0.05 * RATE))).toBeLessThan(0.03)
    engine.stop()
    heard(engine, RATE)
    engine.play(0)
    const second = heard(engine, RATE)
    expect(peakOf(second.subarray(0, 0.05 * RATE))).toBeGreaterThan(0.24)
  })

  it('lets a value that is not a number out as silence', () => {
    const take = tone(1000, 1)
    take[20000] = Number.NaN
    const engine = new ListeningEngine([take], listenTo(chainOf([])), RATE, 2)
    engine.play(0)
    expect(heard(engine, RATE).every(Number.isFinite)).toBe(true)
  })
})

describe('the backing', () => {
  it('stays in line with the take through a chain that delays', () => {
    const click = new Float32Array(2 * RATE)
    click[RATE] = 0.5
    const settings = listenTo(neutralButLate, { backing: { on: true, levelDb: 0, offsetFrames: 0 } })
    const engine = warmEngine([click], settings, RATE)
    engine.setBacking([click])
    heard(engine, RATE)
    engine.play(0)
    const output = heard(engine, 2 * RATE)
    const peak = output.reduce(
      (best, sample, n) => (Math.abs(sample) > Math.abs(output[best] ?? 0) ? n : best),
      0,
    )
    expect(Math.abs(output[peak] ?? 0)).toBeGreaterThan(0.88)
    expect(output.filter((sample) => Math.abs(sample) > 0.1)).toHaveLength(1)
  })
})
