import { describe, expect, it } from 'vitest'
import type { Biquad } from '../../../src/core/dsp/filters/biquad'
import { BANK_FRAMES, SectionBank } from '../../../src/core/dsp/filters/section-bank'
import { mulberry32, noise } from '../../setup/signals'

const MOST_SECTIONS = 9
const FRAMES = 3 * BANK_FRAMES
/** Rounding of 64-bit arithmetic in poles no closer to the unit circle than 0.95. */
const ROUNDING = 1e-12

/** Stable sections, no two alike, the second without a direct path. */
function sectionsOf(count: number): Biquad[] {
  const random = mulberry32(count)
  return Array.from({ length: count }, (_, k) => {
    const radius = 0.95 * random()
    return {
      b0: k === 1 ? 0 : 0.5 + random(),
      b1: random() - 0.5,
      b2: random() - 0.5,
      a1: -2 * radius * Math.cos(Math.PI * random()),
      a2: radius * radius,
    }
  })
}

/** The difference equation that `Biquad` is defined by, section after section. */
function differenceEquations(input: ArrayLike<number>, sections: readonly Biquad[]): number[] {
  return sections.reduce<number[]>((x, { b0, b1, b2, a1, a2 }) => {
    const y: number[] = []
    const at = (values: readonly number[], n: number) => values[n] ?? 0
    for (let n = 0; n < x.length; n++) {
      y.push(b0 * at(x, n) + b1 * at(x, n - 1) + b2 * at(x, n - 2) - a1 * at(y, n - 1) - a2 * at(y, n - 2))
    }
    return y
  }, Array.from(input))
}

function bankOf(sections: readonly Biquad[]): SectionBank {
  const bank = new SectionBank(MOST_SECTIONS, 1)
  bank.load(sections)
  return bank
}

const [input = new Float32Array()] = noise(FRAMES, 1, 1, 7, () => 0.5).channels

describe('SectionBank.run()', () => {
  const counts = Array.from({ length: MOST_SECTIONS + 1 }, (_, count) => count)

  it.each(counts)('%i sections follow their difference equations, to 64-bit rounding', (count) => {
    const sections = sectionsOf(count)
    const wanted = differenceEquations(input, sections)
    const bank = bankOf(sections)
    const output = new Float64Array(FRAMES)
    for (let from = 0; from < FRAMES; from += BANK_FRAMES) bank.run(input, from, output, from, 0, BANK_FRAMES)
    const peak = wanted.reduce((most, value) => Math.max(most, Math.abs(value)), 0)
    const error = wanted.reduce((most, value, n) => Math.max(most, Math.abs(value - (output[n] ?? 0))), 0)
    expect(peak).toBeGreaterThan(0)
    expect(error).toBeLessThanOrEqual(ROUNDING * peak)
  })

  it.each(counts)(
    '%i sections give the same bits in place, in blocks cut anywhere, rounded once',
    (count) => {
      const whole = bankOf(sectionsOf(count))
      const unrounded = new Float64Array(FRAMES)
      for (let from = 0; from < FRAMES; from += BANK_FRAMES)
        whole.run(input, from, unrounded, from, 0, BANK_FRAMES)
      const cut = bankOf(sectionsOf(count))
      const inPlace = input.slice()
      for (let from = 0, size = 1; from < FRAMES; from += size, size = Math.min(2 * size + 1, BANK_FRAMES)) {
        const frames = Math.min(size, FRAMES - from)
        cut.run(inPlace, from, inPlace, from, 0, frames)
      }
      expect(inPlace).toEqual(Float32Array.from(unrounded))
    },
  )
})
