import type { Sound } from './sound'
import type { Steps } from './steps'

/** Samples of one channel taken in between two steps: well below a millisecond's work. */
const STEP_SAMPLES = 2 ** 17

const LANES = 4
const PRIMES = [0x9e3779b1, 0x85ebca77, 0xc2b2ae3d, 0x27d4eb2f] as const

/**
 * A name for a sound by its samples, 32 hexadecimal digits: alike for the same bits, and in practice for no others. It
 * finds a sound again and proves nothing. Four lanes, each the round of xxHash32 over every fourth sample's bits and its
 * final mix (Y. Collet, "xxHash fast digest algorithm", specification 0.1.1).
 */
export function* sampleHashSteps({ sampleRate, channels }: Sound): Steps<string> {
  const lanes = Uint32Array.from(PRIMES, (prime, k) => mixed(prime ^ Math.imul(sampleRate + k, PRIMES[1])))
  for (const [c, samples] of channels.entries()) {
    const words = new Uint32Array(samples.buffer, samples.byteOffset, samples.length)
    takeIn(lanes, Uint32Array.of(c, words.length, channels.length, sampleRate), 0, LANES)
    for (let from = 0; from < words.length; from += STEP_SAMPLES) {
      const to = Math.min(words.length, from + STEP_SAMPLES)
      takeIn(lanes, words, from, to)
      yield (c + to / words.length) / channels.length
    }
  }
  return Array.from(lanes, (lane) => mixed(lane).toString(16).padStart(8, '0')).join('')
}

function takeIn(lanes: Uint32Array, words: Uint32Array, from: number, to: number): void {
  for (let lane = 0; lane < LANES; lane++) {
    let sum = lanes[lane] ?? 0
    for (let n = from + lane; n < to; n += LANES) {
      sum = (sum + Math.imul(words[n] ?? 0, PRIMES[1])) | 0
      sum = Math.imul((sum << 13) | (sum >>> 19), PRIMES[0])
    }
    lanes[lane] = sum
  }
}

function mixed(word: number): number {
  let mix = word
  mix = Math.imul(mix ^ (mix >>> 15), PRIMES[1])
  mix = Math.imul(mix ^ (mix >>> 13), PRIMES[2])
  return (mix ^ (mix >>> 16)) >>> 0
}
