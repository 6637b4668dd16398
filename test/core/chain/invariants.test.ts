import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  bypassed,
  chainOf,
  frameCount,
  renderChain,
  type Sound,
  type StageDoc,
  stageKinds,
} from '../../../src/core'
import { OVERSAMPLER_LATENCY_FRAMES } from '../../../src/core/dsp/oversampling/rate'
import { createProcessor } from '../../../src/core/stages/processors'
import { impulse, stageWith } from '../../setup/chains'
import { GainCollector } from '../../setup/gain-collector'
import { chains, holds, SEED, sampleRates, sounds, stages } from '../../setup/random-chains'
import { largestDifference } from '../../setup/spectrum'

const shortSounds = sounds({ min: 1, max: 3000 })

function silence(sampleRate: number, frames: number): Sound {
  return { sampleRate, channels: [new Float32Array(frames), new Float32Array(frames)] }
}

/** Largest magnitude in `sound`. */
function peak({ channels }: Sound): number {
  return channels.reduce((most, samples) => samples.reduce((m, x) => Math.max(m, Math.abs(x)), most), 0)
}

describe(`every chain, whatever its settings and the sample rate (seed ${SEED})`, () => {
  it('gives the same bits, in sound and traces, however the sound is cut into blocks', () => {
    const cut = fc.oneof(fc.constantFrom(1, 7, 128, 4096), fc.integer({ min: 1, max: 5000 }))
    holds(fc.tuple(shortSounds, chains(), cut), 80, ([sound, chain, blockFrames]) => {
      const whole = renderChain(sound, chain)
      const pieces = renderChain(sound, chain, { blockFrames })
      expect(pieces.sound.channels).toEqual(whole.sound.channels)
      expect(pieces.traces).toEqual(whole.traces)
    })
  })

  it('gives back the input, bit for bit, when it is empty or everything is switched off', () => {
    holds(fc.tuple(shortSounds, chains()), 60, ([sound, chain]) => {
      expect(renderChain(sound, chainOf([])).sound.channels).toEqual(sound.channels)
      const off = renderChain(sound, bypassed(chain))
      expect(off.sound.channels).toEqual(sound.channels)
      expect(off.traces.size).toBe(0)
    })
  })

  it('leaves its input untouched and gives back its rate, channels and length', () => {
    holds(fc.tuple(shortSounds, chains()), 40, ([sound, chain]) => {
      const copy = sound.channels.map((samples) => samples.slice())
      const output = renderChain(sound, chain).sound
      expect(sound.channels).toEqual(copy)
      expect(output.sampleRate).toBe(sound.sampleRate)
      expect(output.channels.map(({ length }) => length)).toEqual(copy.map(({ length }) => length))
    })
  })

  it('finite in, finite out', () => {
    holds(fc.tuple(sounds({ min: 1, max: 12_000 }), chains()), 150, ([sound, chain]) => {
      const { sound: output, traces } = renderChain(sound, chain)
      for (const samples of output.channels) expect(samples.every(Number.isFinite)).toBe(true)
      for (const { gainDb } of traces.values()) {
        expect(gainDb.every((gain) => gain <= 0 && gain > Number.NEGATIVE_INFINITY)).toBe(true)
      }
    })
  })

  it('silence in, silence out', () => {
    holds(fc.tuple(sampleRates, chains()), 60, ([sampleRate, chain]) => {
      const { sound, traces } = renderChain(silence(sampleRate, 2000), chain)
      expect(peak(sound)).toBe(0)
      for (const { gainDb } of traces.values()) expect(gainDb.every((gain) => gain === 0)).toBe(true)
    })
  })
})

describe(`every stage (seed ${SEED})`, () => {
  it('falls back to exact silence after the sound has ended: no crawl through subnormal numbers', () => {
    // The slowest thing there is: a band of Q 20 at 10 Hz falls by 60 dB in 4.4 s, and by 400 dB in half a minute.
    const slowest = stageWith('equaliser', {
      bands: [{ on: true, shape: 'bell', frequencyHz: 10, gainDb: 24, q: 20, slopeDbPerOctave: 12 }],
    })
    /** Seconds until the stage has been silent for three in a row; Infinity where that takes more than 200. */
    const secondsToSilence = (stage: StageDoc) => {
      const sampleRate = 8000
      const processor = createProcessor(stage, { sampleRate, channelCount: 1 })
      const burst = new Float32Array(400).fill(0.5)
      processor.process([burst], burst.length)
      const second = new Float32Array(sampleRate)
      let silent = 0
      for (let n = 1; n <= 200; n++) {
        second.fill(0)
        processor.process([second], second.length)
        silent = second.every((x) => x === 0) ? silent + 1 : 0
        if (silent === 3) return n
      }
      return Number.POSITIVE_INFINITY
    }
    expect(secondsToSilence(slowest)).toBeLessThanOrEqual(200)
    holds(stages(), 40, (stage) => {
      expect(secondsToSilence(stage)).toBeLessThanOrEqual(200)
    })
  })

  it('gives the same bits however the sound is cut, with settings that change on the way and again in the fade', () => {
    const kinds = fc.constantFrom(...stageKinds)
    const three = kinds.chain((kind) => fc.tuple(stages([kind]), stages([kind]), stages([kind])))
    const cut = fc.oneof(fc.constantFrom(1, 7, 128, 4096), fc.integer({ min: 1, max: 3000 }))
    const when = fc.tuple(fc.integer({ min: 1, max: 2000 }), fc.integer({ min: 1, max: 900 }))
    holds(
      fc.tuple(sounds({ min: 4000, max: 6000 }), three, cut, when),
      80,
      ([sound, settings, blockFrames, [first, later]]) => {
        const [stage, second, third] = settings
        const host = {
          sampleRate: sound.sampleRate,
          channelCount: sound.channels.length,
          maxLookaheadMs: 10,
        }
        const frames = frameCount(sound)
        const through = (blockFrames: number) => {
          const processor = createProcessor(stage, host)
          const channels = sound.channels.map((samples) => samples.slice())
          const gains = new GainCollector()
          const run = (from: number, to: number) => {
            for (let at = from; at < to; at += blockFrames) {
              const end = Math.min(to, at + blockFrames)
              const block = channels.map((samples) => samples.subarray(at, end))
              processor.process(block, end - at, gains)
            }
          }
          run(0, first)
          processor.set(second.settings)
          run(first, first + later)
          processor.set(third.settings)
          run(first + later, frames)
          return { channels, gainDb: gains.gainDb }
        }
        expect(through(blockFrames)).toEqual(through(frames))
      },
    )
  })

  it('is as new after reset()', () => {
    const pair = fc.tuple(shortSounds, shortSounds, stages(), stages())
    holds(pair, 100, ([first, second, stage, changed]) => {
      const host = { sampleRate: second.sampleRate, channelCount: 1, maxLookaheadMs: 10 }
      const used = createProcessor(stage, host)
      const run = (processor: typeof used, sound: Sound) => {
        const samples = sound.channels[0]?.slice() ?? new Float32Array(0)
        const gains = new GainCollector()
        processor.process([samples], samples.length, gains)
        return { samples, gainDb: gains.gainDb }
      }
      run(used, first)
      // Settings that arrive in mid-stream leave a ramp behind, which reset must finish too.
      const latest = changed.kind === stage.kind ? changed : stage
      if (changed.kind === stage.kind) setSame(used, changed)
      run(used, first)
      used.reset()
      expect(run(used, second)).toEqual(run(createProcessor(latest, host), second))
    })
  })

  it('puts an impulse out where it went in, by the latency it states', () => {
    for (const sampleRate of [8000, 44_100, 96_000]) {
      for (const stage of [
        stageWith('equaliser', {}),
        stageWith('compressor', { lookaheadMs: 7.3, thresholdDb: 0 }),
        stageWith('de-esser', { band: 'all', thresholdDb: 0 }),
        stageWith('saturator', { driveDb: 0 }),
        stageWith('gain', { gainDb: -6 }),
      ]) {
        const rendering = renderChain(impulse(sampleRate, 2000, 900), chainOf([stage]))
        const [samples = new Float32Array(0)] = rendering.sound.channels
        const largest = samples.reduce(
          (best, x, n) => (Math.abs(x) > Math.abs(samples[best] ?? 0) ? n : best),
          0,
        )
        expect(largest, `${stage.kind} at ${sampleRate} Hz`).toBe(900)
        const processor = createProcessor(stage, { sampleRate, channelCount: 1 })
        expect(rendering.latencyFrames).toBe(processor.latencyFrames)
      }
    }
  })

  it('adds up latencies: lookahead, saturator and lookahead again, an impulse at any frame stays there', () => {
    const chain = chainOf([
      stageWith('compressor', { lookaheadMs: 10, thresholdDb: 0 }, 'a'),
      stageWith('saturator', { driveDb: 0 }, 'b'),
      { ...stageWith('saturator', { driveDb: 0 }, 'off'), on: false },
      stageWith('compressor', { lookaheadMs: 0.5, thresholdDb: 0 }, 'c'),
    ])
    holds(fc.integer({ min: 0, max: 1999 }), 20, (at) => {
      const { sound, latencyFrames } = renderChain(impulse(48_000, 2000, at), chain)
      const [samples = new Float32Array(0)] = sound.channels
      const largest = samples.reduce(
        (best, x, n) => (Math.abs(x) > Math.abs(samples[best] ?? 0) ? n : best),
        0,
      )
      expect(largest).toBe(at)
      expect(latencyFrames).toBe(480 + 2 * OVERSAMPLER_LATENCY_FRAMES + 24)
    })
  })

  it('gives the same bits, a fixed delay later, where room is kept for more lookahead', () => {
    holds(fc.tuple(shortSounds, stages(['compressor'])), 60, ([sound, stage]) => {
      const { sampleRate, channels } = sound
      const host = { sampleRate, channelCount: channels.length }
      const [own, reserved] = [{}, { maxLookaheadMs: 10 }].map((reserve) => {
        const processor = createProcessor(stage, { ...host, ...reserve })
        const frames = frameCount(sound) + processor.latencyFrames
        const padded = channels.map((samples) => {
          const copy = new Float32Array(frames)
          copy.set(samples)
          return copy
        })
        processor.process(padded, frames)
        return padded.map((samples) => samples.subarray(processor.latencyFrames))
      })
      expect(reserved).toEqual(own)
    })
  })

  it('linear stages commute to below -100 dB', () => {
    const linear = stages(['equaliser', 'gain'])
    holds(fc.tuple(sounds({ min: 2000, max: 4000 }), linear, linear), 100, ([sound, a, b]) => {
      const [first, second] = [
        { ...a, id: 'a' },
        { ...b, id: 'b' },
      ]
      const oneWay = renderChain(sound, chainOf([first, second])).sound
      const other = renderChain(sound, chainOf([second, first])).sound
      // Between stages the sound is rounded to 32 bits, so the loudest of what passes there counts.
      const between = [first, second].map((stage) => peak(renderChain(sound, chainOf([stage])).sound))
      const loudest = Math.max(peak(sound), peak(oneWay), ...between)
      expect(largestDifference(oneWay.channels, other.channels)).toBeLessThanOrEqual(1e-5 * loudest)
    })
  })
})

/** Hands settings to a processor made for a stage of the same kind. */
function setSame(processor: ReturnType<typeof createProcessor>, stage: StageDoc): void {
  processor.set(stage.settings)
}
