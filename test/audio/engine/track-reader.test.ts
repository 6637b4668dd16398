import { describe, expect, it } from 'vitest'
import { TrackReader } from '../../../src/audio/engine/track-reader'
import { largestStep } from '../../setup/engine'

const RATE = 48000
const FADE_FRAMES = 384

function read(reader: TrackReader, samples: Float32Array, frames: number): Float32Array {
  const output = new Float32Array(frames)
  for (let done = 0; done < frames; ) {
    const count = reader.readable(Math.min(128, frames - done))
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
