import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type StageDoc, type StageKind, stageKinds } from '../../../src/core'
import { SETTING_FADE_MS } from '../../../src/core/dsp/dynamics/time-constant'
import { createProcessor } from '../../../src/core/stages/processors'
import { holds, movedSettings, SEED, sampleRates, stages } from '../../setup/random-chains'

/** When settings change, at the earliest, and how long after it is listened. */
interface Times {
  readonly settledSeconds: number
  readonly afterSeconds: number
}

/** Until filters and reduction envelopes have come up. */
const USUAL_TIMES: Times = { settledSeconds: 0.4, afterSeconds: 0.3 }
/** For stages that hear no more of the past than their oversampling filters do, and a fade. */
const SHORT_TIMES: Times = { settledSeconds: 0.12, afterSeconds: 0.12 }

function timesOf({ kind }: StageDoc): Times {
  return kind === 'saturator' || kind === 'gain' ? SHORT_TIMES : USUAL_TIMES
}

/**
 * How much louder a step a fade may make than either of what it fades between, in units of the peak: the steepest
 * slope of the fade, 1.5 times its mean, over its length, times the most that two sounds of that peak are apart, 2.
 */
function stepOfFade(sampleRate: number): number {
  return (2 * 1.5) / ((SETTING_FADE_MS / 1000) * sampleRate)
}

/** Largest difference of two frames in a row, and largest magnitude, from frame `from` on. */
function extent(samples: Float32Array, from: number): { step: number; peak: number } {
  let step = 0
  let peak = 0
  for (let n = from; n < samples.length; n++) {
    const sample = samples[n] ?? 0
    step = Math.max(step, Math.abs(sample - (samples[n - 1] ?? sample)))
    peak = Math.max(peak, Math.abs(sample))
  }
  return { step, peak }
}

interface Change {
  readonly before: StageDoc
  /** The settings gone to, one after another. */
  readonly afterwards: readonly StageDoc[]
  readonly frequencyHz: number
  readonly sampleRate: number
  /** Frames until the first change, beyond those in which the stage settles, and from each to the next. */
  readonly wait: number
}

function sine(
  frequencyHz: number,
  sampleRate: number,
  { settledSeconds, afterSeconds }: Times = USUAL_TIMES,
): Float32Array {
  const frames = Math.round((settledSeconds + afterSeconds) * sampleRate)
  return Float32Array.from(
    { length: frames },
    (_, n) => 0.25 * Math.sin((2 * Math.PI * frequencyHz * n) / sampleRate),
  )
}

/** A sine through settings that change on the way, and through each of those settings alone. */
function throughChange({ before, afterwards, frequencyHz, sampleRate, wait }: Change) {
  const host = { sampleRate, channelCount: 1, maxLookaheadMs: 10 }
  const times = timesOf(before)
  const input = sine(frequencyHz, sampleRate, times)
  const settled = Math.round(times.settledSeconds * sampleRate)
  const processor = createProcessor(before, host)
  const changing = input.slice()
  let from = 0
  afterwards.forEach((stage, i) => {
    const to = settled + (i + 1) * wait
    processor.process([changing.subarray(from, to)], to - from)
    processor.set(stage.settings)
    from = to
  })
  processor.process([changing.subarray(from)], changing.length - from)
  const alone = [before, ...afterwards].map((stage) => {
    const samples = input.slice()
    createProcessor(stage, host).process([samples], samples.length)
    return extent(samples, settled >> 1)
  })
  return { changed: extent(changing, settled), alone: [extent(input, 0), ...alone] }
}

function expectNoStep(change: Change): void {
  const { changed, alone } = throughChange(change)
  const [step, peak] = [
    Math.max(...alone.map((each) => each.step)),
    Math.max(...alone.map((each) => each.peak)),
  ]
  expect(changed.step).toBeLessThanOrEqual(step + stepOfFade(change.sampleRate) * peak + 1e-6)
}

const circumstances = fc
  .record({
    sampleRate: sampleRates,
    share: fc.integer({ min: 0, max: 1000 }),
    wait: fc.integer({ min: 1, max: 2000 }),
  })
  // 40 Hz to 8 kHz, or to 0.45 of the rate.
  .map(({ share, sampleRate, wait }) => ({
    frequencyHz: Math.min(40 * 200 ** (share / 1000), 0.45 * sampleRate),
    sampleRate,
    wait: Math.min(wait, sampleRate >> 4),
  }))

/**
 * `stage`, with what a compressor listens to left as it was: another detector needs an attack to find its level,
 * while makeup meant for it is there at once. Those settings are moved one at a time below.
 */
function listeningAs(before: StageDoc, stage: StageDoc): StageDoc {
  if (before.kind !== 'compressor' || stage.kind !== 'compressor') return stage
  const { detector, lookaheadMs, sideChainHighPassHz } = before.settings
  return { ...stage, settings: { ...stage.settings, detector, lookaheadMs, sideChainHighPassHz } }
}

describe(`set() while a sine sounds makes no step larger than the sine and the fade make (seed ${SEED})`, () => {
  const anyOf = (kind: StageKind) => stages([kind])

  it.each(stageKinds)('%s: all settings at once, from anywhere in their ranges to anywhere', (kind) => {
    holds(fc.tuple(anyOf(kind), anyOf(kind), circumstances), 60, ([before, after, rest]) => {
      expectNoStep({ before, afterwards: [listeningAs(before, after)], ...rest })
    })
  })

  it.each(stageKinds)('%s: again and again before the fade has ended', (kind) => {
    const changes = fc.tuple(anyOf(kind), fc.tuple(anyOf(kind), anyOf(kind), anyOf(kind)), circumstances)
    holds(changes, 20, ([before, afterwards, rest]) => {
      expectNoStep({ before, afterwards: afterwards.map((stage) => listeningAs(before, stage)), ...rest })
    })
  })

  it('compressor: any one setting, its detector, lookahead and side-chain among them', () => {
    holds(fc.tuple(movedSettings('compressor'), circumstances), 100, ([{ before, after }, rest]) => {
      expectNoStep({ before, afterwards: [after], ...rest })
    })
  })

  it('would see 12 dB at once', () => {
    const samples = sine(1000, 48_000)
    const louder = samples.map((sample, n) => (n < 24_012 ? sample : 4 * sample))
    const all = samples.map((sample) => 4 * sample)
    const [{ step, peak }, changed] = [extent(all, 0), extent(louder, 0)]
    expect(changed.step).toBeGreaterThan(step + stepOfFade(48_000) * peak)
  })
})
