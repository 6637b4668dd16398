import type { Sound } from '../../src/core'
import { demoTake } from '../../src/demo'

/** The demo sung over and over until `minutes` are full. */
export function longTake(minutes: number): Sound {
  const { vocal } = demoTake()
  const once = vocal.channels[0] ?? new Float32Array()
  const samples = new Float32Array(minutes * 60 * vocal.sampleRate)
  for (let from = 0; from < samples.length; from += once.length) {
    samples.set(once.subarray(0, samples.length - from), from)
  }
  return { sampleRate: vocal.sampleRate, channels: [samples] }
}
