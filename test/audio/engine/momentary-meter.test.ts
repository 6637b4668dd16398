import { describe, expect, it } from 'vitest'
import { MomentaryMeter } from '../../../src/audio/engine/momentary-meter'
import { loudnessOverTime } from '../../../src/core'
import { stereoTone } from '../../setup/signals'
import { sungDemo } from '../../setup/sung-demo'

const RATE = 48_000

/** Meter readings every 100 ms, with the sound given in blocks of the audio thread. */
function readings(channels: readonly Float32Array[], seconds: number): number[] {
  const meter = new MomentaryMeter(RATE, channels.length)
  return Array.from({ length: seconds * 10 }, (_, tenth) => {
    for (let from = 0; from < RATE / 10; from += 100) {
      const start = tenth * (RATE / 10) + from
      meter.process(
        channels.map((samples) => samples.subarray(start, start + 100)),
        100,
      )
    }
    return meter.lufs
  })
}

describe('momentary loudness while it plays', () => {
  it('reads -23 LUFS for EBU Tech 3341, table 1, case 1: stereo 1 kHz at -23 dBFS', () => {
    expect(readings(stereoTone(RATE, [[2, -23]]).channels, 2).at(-1)).toBeCloseTo(-23, 1)
  })

  it('reads what the offline measure reads, all along the demo', () => {
    const { vocal } = sungDemo()
    const offline = loudnessOverTime(vocal).momentaryLufs
    const live = readings(vocal.channels, 20)
    for (let tenth = 4; tenth < 200; tenth++) {
      const expected = offline[tenth] ?? Number.NaN
      if (!Number.isNaN(expected)) expect(live[tenth - 1]).toBeCloseTo(expected, 3)
    }
  })

  it('falls to nothing within 400 ms of silence', () => {
    const samples = new Float32Array(2 * RATE)
    samples.fill(0.5, 0, RATE)
    expect(readings([samples], 2).at(-1)).toBeLessThan(-100)
  })
})
