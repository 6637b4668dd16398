import fc from 'fast-check'
import { excerpt, type Sound } from '../../src/core'
import { sampleRates, sounds } from './random-chains'

/** A sine that starts at its crest and stops wherever the sound ends, from -40 to +6 dBFS. */
function crests(frames: { min: number; max: number }): fc.Arbitrary<Sound> {
  return fc
    .record({
      sampleRate: sampleRates,
      count: fc.integer(frames),
      levelDb: fc.integer({ min: -40, max: 6 }),
      cyclesPerFrame: fc.integer({ min: 1, max: 450 }).map((thousandths) => thousandths / 1000),
    })
    .map(({ sampleRate, count, levelDb, cyclesPerFrame }) => {
      const peak = 10 ** (levelDb / 20)
      const crest = (n: number) => peak * Math.cos(2 * Math.PI * cyclesPerFrame * n)
      return { sampleRate, channels: [Float32Array.from({ length: count }, (_, n) => crest(n))] }
    })
}

/** The middle of a longer sound, as when a recording is cut in the middle of a word. */
function middles({ min, max }: { min: number; max: number }): fc.Arbitrary<Sound> {
  return fc
    .tuple(sounds({ min: 3 * min, max: 3 * max }), fc.integer({ min: 0, max: 2 * min }))
    .map(([sound, from]) => excerpt(sound, from, from + max))
}

/** Takes that begin and end at full strength: noise, sines from their crest, pieces out of the middle of a sound. */
export function abruptSounds(frames: { min: number; max: number }): fc.Arbitrary<Sound> {
  return fc.oneof(sounds(frames), crests(frames), middles(frames))
}
