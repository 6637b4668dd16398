import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { MOST_SAMPLES, samplesJob } from '../../../src/compute/jobs/samples-job'
import { spectrogramJob, type TilePiece } from '../../../src/compute/jobs/spectrogram-job'
import {
  chainOf,
  finished,
  frameCount,
  renderChain,
  type Sound,
  type StageDoc,
  spectrogram,
  TILE_COLUMNS,
  tileRange,
} from '../../../src/core'
import { stageWith } from '../../setup/chains'
import { hashed, memoryOf, toolsOf } from '../../setup/evidence-here'
import { chains, SEED, sounds } from '../../setup/random-chains'
import { noise } from '../../setup/signals'

/** No room for any sound, or for all of them. */
const ROOMS = [0, 2 ** 26]
/** What is left of gains where a part of a long take is rendered, of full scale: -66 dB. */
const PART_TOLERANCE = 5e-4

function samplesHere(sound: Sound, stages: readonly StageDoc[], from: number, to: number, room: number) {
  const memory = memoryOf(hashed(sound), room)
  const input = { take: memory.take?.hash ?? '', stages, range: { from, to } }
  return { memory, samples: finished(samplesJob(input, toolsOf(memory))) }
}

describe('samples of a range', () => {
  it('are those of a render of the whole, whatever there is room for', () => {
    const asked = fc.record({
      sound: sounds({ min: 500, max: 6000 }),
      chain: chains(undefined, { minLength: 0, maxLength: 3 }),
      at: fc.tuple(
        fc.double({ min: -0.2, max: 1.2, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
      ),
      room: fc.constantFrom(...ROOMS),
    })
    fc.assert(
      fc.property(asked, ({ sound, chain, at: [start, length], room }) => {
        const frames = frameCount(sound)
        const from = Math.round(start * frames)
        const to = from + Math.round(length * frames)
        const whole = renderChain(sound, chain).sound
        const { samples } = samplesHere(sound, chain.stages, from, to, room)
        expect(samples.from).toBe(Math.max(0, from))
        expect(samples.channels).toEqual(
          whole.channels.map((each) => each.slice(Math.max(0, from), Math.max(0, from, to))),
        )
      }),
      { numRuns: 25, seed: SEED },
    )
  })

  it('of a long take are rendered from ahead of the range, with detectors settled', () => {
    const sound = noise(8000, 90, 1, 4, (at) => 0.3 + 0.25 * Math.sin(3 * at))
    const { stages } = chainOf([
      stageWith('compressor', { thresholdDb: -30, ratio: 6, releaseMs: 2000 }, 'slow'),
      stageWith('equaliser', {}, 'shape'),
    ])
    const [from, to] = [60 * 8000, 60 * 8000 + 4000]
    const { memory, samples } = samplesHere(sound, stages, from, to, 0)
    const whole = renderChain(sound, chainOf(stages)).sound.channels[0] ?? new Float32Array(0)
    const found = samples.channels[0] ?? new Float32Array(0)
    expect([samples.from, found.length]).toEqual([from, to - from])
    const furthest = found.reduce((most, x, k) => Math.max(most, Math.abs(x - (whole[from + k] ?? 0))), 0)
    expect(furthest).toBeLessThan(PART_TOLERANCE)
    // Nothing of what is kept for edits gave way.
    expect(memory.sounds.bytes).toBe(0)
  })

  it('of more than a screen are refused', () => {
    const sound = noise(8000, 1, 1, 1, () => 0.1)
    expect(() => samplesHere(sound, [], 0, MOST_SAMPLES + 1, 0)).toThrow(RangeError)
  })

  it('are copies: the take itself stays with the worker', () => {
    const sound = noise(8000, 1, 1, 1, () => 0.1)
    const { memory, samples } = samplesHere(sound, [], 0, 8000, 0)
    samples.channels[0]?.fill(0)
    expect(memory.take?.sound.channels[0]?.some((x) => x !== 0)).toBe(true)
  })
})

describe('tiles of a spectrogram', () => {
  it('are columns of the spectrogram of the rendered sound, in the order in which they were asked for', () => {
    const sound = noise(8000, 20, 2, 4, (at) => (at < 10 ? 0.5 : 0.05))
    const { stages } = chainOf([stageWith('compressor', { thresholdDb: -30, ratio: 6 }, 'hold')])
    const memory = memoryOf(hashed(sound))
    const tiles = [2, 0].map((index) => ({ hopFrames: 128, index }))
    const told: TilePiece[] = []
    const input = { take: memory.take?.hash ?? '', stages, tiles }
    finished(
      spectrogramJob(
        input,
        toolsOf<TilePiece>(memory, (piece) => void told.push(piece)),
      ),
    )
    expect(told.map(({ tile }) => tile)).toEqual(tiles)
    const { sound: rendered } = renderChain(sound, chainOf(stages))
    for (const { tile, levels } of told) {
      const { from } = tileRange(tile)
      const columns = { fromFrame: from, hopFrames: 128, count: TILE_COLUMNS }
      expect(levels).toEqual(spectrogram(rendered, columns))
    }
  })

  it('of a sound that there is free room for are worked out from one render', () => {
    const sound = noise(8000, 20, 1, 4, () => 0.3)
    const { stages } = chainOf([stageWith('gain', { gainDb: -3 }, 'level')])
    const memory = memoryOf(hashed(sound), 2 * 4 * frameCount(sound))
    const input = { take: memory.take?.hash ?? '', stages, tiles: [{ hopFrames: 512, index: 0 }] }
    finished(spectrogramJob(input, toolsOf<TilePiece>(memory)))
    const kept = memory.sounds.bytes
    expect(kept).toBeGreaterThanOrEqual(4 * frameCount(sound))
    const next = chainOf([stageWith('gain', { gainDb: -4 }, 'level')])
    finished(spectrogramJob({ ...input, stages: next.stages }, toolsOf<TilePiece>(memory)))
    expect(memory.sounds.bytes).toBe(kept)
  })
})
