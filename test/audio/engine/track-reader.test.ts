import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { TrackReader } from '../../../src/audio/engine/track-reader'
import type { FrameRange } from '../../../src/core'
import { largestStep } from '../../setup/engine'

const RATE = 48000
const FADE_FRAMES = 384
/** The page lets no loop be shorter: 0.1 s. */
const SHORTEST_LOOP_FRAMES = 4800

function read(reader: TrackReader, samples: Float32Array, frames: number, blockFrames = 128): Float32Array {
  const output = new Float32Array(frames)
  for (let done = 0; done < frames; ) {
    const count = reader.readable(Math.min(blockFrames, frames - done))
    reader.read({ channels: [samples], offsetFrames: 0 }, [output.subarray(done, done + count)], count)
    reader.advance(count)
    done += count
  }
  return output
}

/** A low tone whose period does not fit the loop, so that a hard seam would step. */
const tone = Float32Array.from({ length: RATE }, (_, n) => Math.sin((2 * Math.PI * 187.3 * n) / RATE))

describe('TrackReader', () => {
  it('reads the take sample for sample behind the fade-in', () => {
    const reader = new TrackReader(RATE, RATE)
    reader.goTo(1000)
    const output = read(reader, tone, 5000)
    expect(output.subarray(FADE_FRAMES)).toEqual(tone.subarray(1000 + FADE_FRAMES, 6000))
    expect(output[0]).toBeCloseTo((tone[1000] ?? 0) / FADE_FRAMES, 6)
  })

  it('loops ten times with no gap and no step larger than the material and the crossfade make', () => {
    const reader = new TrackReader(RATE, RATE)
    const loop = { from: 10_000, to: 14_567 }
    reader.setLoop(loop)
    reader.goTo(loop.from)
    const length = loop.to - loop.from
    const output = read(reader, tone, 10 * length)
    // At worst the fade carries the sound from one peak to the opposite one: 2 over its length.
    expect(largestStep(output, FADE_FRAMES)).toBeLessThan(largestStep(tone) + 2 / FADE_FRAMES)
    for (let turn = 1; turn < 10; turn++) {
      // Behind each seam the loop starts again exactly where it started.
      expect(output[turn * length + 100]).toBe(tone[loop.from + 100])
    }
  })

  it('loops that start at the very beginning blend with the silence before it', () => {
    const reader = new TrackReader(RATE, RATE)
    reader.setLoop({ from: 0, to: 6000 })
    reader.goTo(0)
    const output = read(reader, tone, 20_000)
    expect(largestStep(output, FADE_FRAMES)).toBeLessThan(largestStep(tone) + 1 / FADE_FRAMES)
    expect(output[6000 + 50]).toBe(tone[50])
  })

  it('seeks and stops without a step, even in the middle of a fade', () => {
    const reader = new TrackReader(RATE, RATE)
    reader.goTo(0)
    const parts = [read(reader, tone, 3000)]
    reader.goTo(20_000)
    parts.push(read(reader, tone, 100))
    reader.goTo(30_000)
    parts.push(read(reader, tone, 2000))
    reader.stop()
    parts.push(read(reader, tone, 2000))
    const all = Float32Array.from(parts.flatMap((part) => [...part]))
    expect(largestStep(all)).toBeLessThan(largestStep(tone) + 2 / FADE_FRAMES)
    expect(reader.running).toBe(false)
    expect(all.at(-1)).toBe(0)
  })

  it('goes to a loop that is set while it plays elsewhere, and stays in it', () => {
    for (const start of [0, 30_000, 14_500]) {
      const reader = new TrackReader(RATE, RATE)
      reader.goTo(start)
      const before = read(reader, tone, 1000)
      reader.setLoop({ from: 10_000, to: 15_000 })
      const output = Float32Array.from([...before, ...read(reader, tone, 20_000)])
      expect(largestStep(output, FADE_FRAMES)).toBeLessThan(largestStep(tone) + 2 / FADE_FRAMES)
      expect(reader.positionFrame).toBeGreaterThan(10_000 - FADE_FRAMES)
      expect(reader.positionFrame).toBeLessThan(15_000)
    }
  })

  it('plays on where a loop is set, or made longer, around the playhead', () => {
    const reader = new TrackReader(RATE, RATE)
    reader.goTo(10_000)
    read(reader, tone, 1000)
    reader.setLoop({ from: 8000, to: 13_000 })
    reader.setLoop({ from: 8000, to: 40_000 })
    expect(read(reader, tone, 20_000)).toEqual(tone.subarray(11_000, 31_000))
  })

  /** Starts in a loop: anywhere, or within two fades of its end, where the start's own fade reaches its seam. */
  const startIn = (loop: FrameRange) =>
    fc.oneof(
      fc.integer({ min: loop.from, max: loop.to - 1 }),
      fc.integer({ min: loop.to - 2 * FADE_FRAMES - 2, max: loop.to - 1 }),
    )

  /** Loops in a take of one second, the shortest there are among them. */
  const loops = fc
    .oneof(
      fc.constantFrom(SHORTEST_LOOP_FRAMES, 2 * FADE_FRAMES),
      fc.integer({ min: 2 * FADE_FRAMES, max: RATE / 2 }),
    )
    .chain((length) =>
      fc.integer({ min: 0, max: RATE - length }).map((from) => ({ from, to: from + length })),
    )

  /** Heard as 1 wherever a loop must not go: outside it, and outside what its seam blends in from before it. */
  const outside = ({ from, to }: FrameRange) =>
    Float32Array.from({ length: RATE }, (_, n) => (n >= from - FADE_FRAMES && n < to ? 0 : 1))

  it('never leaves a loop that it is in, wherever it starts, stops, and starts again', () => {
    const visits = loops.chain((loop) =>
      fc.record({
        loop: fc.constant(loop),
        starts: fc.array(
          fc.record({ at: startIn(loop), frames: fc.integer({ min: 1, max: 3000 }), stops: fc.boolean() }),
          {
            minLength: 1,
            maxLength: 5,
          },
        ),
        blockFrames: fc.constantFrom(1, 7, 128, 500, 4096),
      }),
    )
    fc.assert(
      fc.property(visits, ({ loop, starts, blockFrames }) => {
        const reader = new TrackReader(RATE, RATE)
        reader.setLoop(loop)
        const samples = outside(loop)
        for (const { at, frames, stops } of starts) {
          reader.goTo(at)
          expect(Math.max(...read(reader, samples, frames, blockFrames))).toBe(0)
          if (stops) reader.stop()
        }
        reader.goTo(starts[0]?.at ?? 0)
        expect(Math.max(...read(reader, samples, 2 * RATE, blockFrames))).toBe(0)
        expect(reader.running).toBe(true)
      }),
      {
        examples: [
          [
            {
              loop: { from: 10_000, to: 20_000 },
              starts: [{ at: 19_700, frames: 128, stops: false }],
              blockFrames: 128,
            },
          ],
        ],
      },
    )
  })

  it('is in a loop for good within three fades of its being set, wherever the playhead is on its way to', () => {
    const settings = fc.record({
      loop: loops,
      start: fc.nat(RATE - 1),
      framesBefore: fc.integer({ min: 0, max: 2000 }),
      seek: fc.option(fc.nat(RATE - 1), { nil: null }),
      framesBetween: fc.integer({ min: 0, max: 500 }),
    })
    fc.assert(
      fc.property(settings, ({ loop, start, framesBefore, seek, framesBetween }) => {
        const reader = new TrackReader(RATE, RATE)
        const samples = outside(loop)
        reader.goTo(start)
        read(reader, samples, framesBefore)
        if (seek !== null) reader.goTo(seek)
        read(reader, samples, framesBetween)
        fc.pre(reader.running)
        reader.setLoop(loop)
        read(reader, samples, 3 * FADE_FRAMES)
        expect(Math.max(...read(reader, samples, RATE))).toBe(0)
        expect(reader.running).toBe(true)
      }),
    )
  })

  it('plays on where it is sent behind the loop, to the end of the take', () => {
    const reader = new TrackReader(RATE, RATE)
    reader.setLoop({ from: 8000, to: 13_000 })
    reader.goTo(13_000)
    expect(read(reader, tone, 20_000).subarray(FADE_FRAMES)).toEqual(
      tone.subarray(13_000 + FADE_FRAMES, 33_000),
    )
  })

  it('refuses a loop too short to be faded round', () => {
    const reader = new TrackReader(RATE, RATE)
    expect(() => reader.setLoop({ from: 0, to: 2 * FADE_FRAMES - 1 })).toThrow(RangeError)
  })

  it('is not started by a loop', () => {
    const reader = new TrackReader(RATE, RATE)
    reader.setLoop({ from: 8000, to: 13_000 })
    expect(reader.running).toBe(false)
    reader.goTo(0)
    read(reader, tone, 1000)
    reader.stop()
    reader.setLoop({ from: 20_000, to: 25_000 })
    read(reader, tone, 1000)
    expect(reader.running).toBe(false)
  })

  it('stops behind the last frame', () => {
    const reader = new TrackReader(1000, RATE)
    reader.goTo(0)
    read(reader, tone.subarray(0, 1000), 1001)
    expect(reader.running).toBe(false)
  })
})
