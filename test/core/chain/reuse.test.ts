import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type ChainDoc,
  chainOf,
  renderChain,
  renderDifference,
  renderSteps,
  type Sound,
  type StageDoc,
} from '../../../src/core'
import { createReference } from '../../../src/core/stages/processors'
import { stageWith } from '../../setup/chains'
import { chains, holds, SEED, sounds, stages } from '../../setup/random-chains'
import { noise } from '../../setup/signals'
import { largestDifference } from '../../setup/spectrum'

const shortSounds = sounds({ min: 1, max: 2000 })

/** One edit such as a hand makes: replace, insert, remove, swap or switch a stage at `place`. */
function edited(
  chain: ChainDoc,
  edit: { number: number; what: number; place: number; stage: StageDoc },
): ChainDoc {
  const list = [...chain.stages]
  const place = list.length === 0 ? 0 : edit.place % list.length
  const old = list[place]
  const added = { ...edit.stage, id: `edit ${edit.number}` }
  if (!old || edit.what === 0) list.splice(place, 0, added)
  else if (edit.what === 1) list.splice(place, 1, added)
  else if (edit.what === 2) list.splice(place, 1)
  else if (edit.what === 3) list[place] = { ...old, on: !old.on }
  else list.unshift(...list.splice(place, 1))
  return chainOf(list)
}

const edits = fc.record({
  what: fc.integer({ min: 0, max: 4 }),
  place: fc.integer({ min: 0, max: 7 }),
  stage: stages(),
})

describe(`a render that starts from an earlier one (seed ${SEED})`, () => {
  it('gives the same bits as a fresh one after any edits', () => {
    const story = fc.tuple(shortSounds, chains(), fc.array(edits, { minLength: 1, maxLength: 4 }))
    holds(story, 80, ([sound, first, changes]) => {
      let chain = first
      let previous = renderChain(sound, chain, { keep: true })
      for (const [number, change] of changes.entries()) {
        chain = edited(chain, { number, ...change })
        const own = renderChain(sound, chain, { keep: true, previous })
        const fresh = renderChain(sound, chain)
        expect(own.sound.channels).toEqual(fresh.sound.channels)
        expect(own.traces).toEqual(fresh.traces)
        expect(own.latencyFrames).toBe(fresh.latencyFrames)
        previous = own
      }
    })
  })

  const sound = noise(48_000, 0.2, 2, 1, () => 0.3)
  const chain = chainOf([
    stageWith('equaliser', {}),
    stageWith('compressor', {}),
    stageWith('gain', { gainDb: 1 }),
  ])

  it('runs the changed stage and those behind it alone: what lies before is the very same memory', () => {
    const previous = renderChain(sound, chain, { keep: true })
    const changed = chainOf([...chain.stages.slice(0, 2), stageWith('gain', { gainDb: 2 })])
    const { kept } = renderChain(sound, changed, { keep: true, previous })
    expect(kept?.taps).toHaveLength(3)
    expect(kept?.taps[0]).toBe(previous.kept?.taps[0])
    expect(kept?.taps[1]).toBe(previous.kept?.taps[1])
    expect(kept?.taps[2]).not.toBe(previous.kept?.taps[2])
    // One stage of three left to run, in blocks of which this sound needs two.
    const steps = [...renderSteps(sound, changed, { previous })]
    expect(steps).toHaveLength(2)
    expect([...renderSteps(sound, changed)]).toHaveLength(6)
  })

  it('takes nothing over from another take, even one of equal length', () => {
    const other: Sound = noise(48_000, 0.2, 2, 2, () => 0.3)
    const previous = renderChain(sound, chain, { keep: true })
    expect(renderChain(other, chain, { previous }).sound.channels).toEqual(
      renderChain(other, chain).sound.channels,
    )
  })

  it('keeps nothing unless asked to', () => {
    expect(renderChain(sound, chain).kept).toBeNull()
  })

  it('tells its progress, rising to 1, and can be abandoned at any step', () => {
    const steps = renderSteps(sound, chain, { blockFrames: 1000 })
    const shares = [...steps]
    expect(shares).toEqual(shares.toSorted((a, b) => a - b))
    expect(shares.at(-1)).toBe(1)
    const abandoned = renderSteps(sound, chain, { blockFrames: 1000 })
    abandoned.next()
    expect(abandoned.next().done).toBe(false)
  })
})

describe(`only what a stage takes away (seed ${SEED})`, () => {
  it('is digital silence where the stage is off or finds nothing to do', () => {
    const quiet = noise(48_000, 0.1, 2, 1, () => 0.01)
    for (const idle of [
      stageWith('equaliser', { bands: [] }),
      stageWith('compressor', { thresholdDb: 0, kneeDb: 0, lookaheadMs: 5 }),
      stageWith('de-esser', { thresholdDb: 0 }),
      stageWith('de-esser', { thresholdDb: 0, band: 'all' }),
      stageWith('saturator', { mix: 0 }),
      stageWith('gain', { gainDb: 0 }),
    ]) {
      const difference = renderDifference(quiet, chainOf([idle]), idle.id)
      expect(
        difference.channels.every((samples) => samples.every((x) => x === 0)),
        idle.kind,
      ).toBe(true)
    }
    holds(fc.tuple(shortSounds, stages()), 40, ([sound, stage]) => {
      const difference = renderDifference(sound, chainOf([{ ...stage, on: false }]), stage.id)
      expect(difference.channels.every((samples) => samples.every((x) => x === 0))).toBe(true)
    })
  })

  it('and what it lets through add up to the sound before it, as the stage passes that when idle', () => {
    holds(fc.tuple(shortSounds, stages()), 60, ([sound, stage]) => {
      const chain = chainOf([stage])
      const difference = renderDifference(sound, chain, stage.id).channels
      const through = renderChain(sound, chain).sound.channels
      const reference = createReference(stage, { sampleRate: sound.sampleRate, channelCount: through.length })
      const frames = (through[0]?.length ?? 0) + reference.latencyFrames
      const passed = sound.channels.map((samples) => {
        const padded = new Float32Array(frames)
        padded.set(samples)
        return padded
      })
      reference.process(passed, frames)
      const sums = through.map((samples, c) => samples.map((x, n) => x + (difference[c]?.[n] ?? 0)))
      const expected = passed.map((samples) => samples.subarray(reference.latencyFrames))
      const loudest = Math.max(
        ...through.map((samples) => samples.reduce((m, x) => Math.max(m, Math.abs(x)), 1)),
      )
      expect(largestDifference(sums, expected)).toBeLessThanOrEqual(1e-6 * loudest)
    })
  })

  it('of a stage that the chain does not have is an error', () => {
    expect(() =>
      renderDifference(
        noise(48_000, 0.01, 1, 1, () => 1),
        chainOf([]),
        'nowhere',
      ),
    ).toThrow(RangeError)
  })
})
