import type { Biquad } from './biquad'
import {
  DIRECT_STRIDE,
  prepareSection,
  runSection,
  runThreeSections,
  runTwoSections,
  type Samples,
} from './direct-form'
import { runTwoFurtherSections } from './further-sections'

/** The most frames a bank is run over at once: small enough to stay in the processor's nearest cache. */
export const BANK_FRAMES = 512

/** State below this (-400 dB) becomes 0, before it slows the processor down as subnormals. */
const SILENCE = 1e-20

/** Second-order sections in series that stand still, and what they hold of the past, for each channel. */
export class SectionBank {
  private readonly coefficients: Float64Array
  private readonly states: readonly Float64Array[]
  /** What passes from group to group of sections. */
  private readonly between = new Float64Array(BANK_FRAMES)
  private sections: readonly Biquad[] = []

  /** @param maxSections the most sections `load` will be given. */
  constructor(maxSections: number, channelCount: number) {
    this.coefficients = new Float64Array(maxSections * DIRECT_STRIDE)
    this.states = Array.from({ length: channelCount }, () => new Float64Array(maxSections * 2))
  }

  /** Whether the output is the input, bit for bit. */
  get changesNothing(): boolean {
    return this.sections.length === 0
  }

  /** Takes over `sections`, with no past. */
  load(sections: readonly Biquad[]): void {
    this.sections = sections
    sections.forEach((section, k) => {
      prepareSection(this.coefficients, k, section)
    })
    this.forget()
  }

  /** Whether these sections are here. */
  holds(sections: readonly Biquad[]): boolean {
    return (
      sections.length === this.sections.length &&
      sections.every((section, k) => isSame(section, this.sections[k]))
    )
  }

  /**
   * Filters `count` values (at most {@link BANK_FRAMES}) of `input` from `inputStart` on, as the next of `channel`, into
   * `output` from `outputStart` on; both may be the same. The first group of sections reads the one, the last writes the
   * other: copies to work on would take half as long as the work.
   */
  run(
    input: Float32Array,
    inputStart: number,
    output: Samples,
    outputStart: number,
    channel: number,
    count: number,
  ): void {
    const { coefficients, between } = this
    const sectionCount = this.sections.length
    const state = this.states[channel]
    if (!state) return
    if (sectionCount === 0) {
      for (let n = 0; n < count; n++) output[outputStart + n] = input[inputStart + n] ?? 0
      return
    }
    const first = firstGroupSize(sectionCount)
    const to = first === sectionCount ? output : between
    const toStart = first === sectionCount ? outputStart : 0
    if (first === 3) runThreeSections(input, inputStart, to, toStart, coefficients, 0, state, count)
    else if (first === 2) runTwoSections(input, inputStart, to, toStart, coefficients, 0, state, count)
    else runSection(input, inputStart, to, toStart, coefficients, 0, state, count)
    for (let k = first; k < sectionCount; k += 2) {
      if (k + 2 < sectionCount) runTwoFurtherSections(between, between, 0, coefficients, k, state, count)
      else runTwoFurtherSections(between, output, outputStart, coefficients, k, state, count)
    }
  }

  /** Lets state that has all but died away be 0. */
  flushDenormals(): void {
    for (const state of this.states) {
      for (let i = 0; i < this.sections.length * 2; i++) {
        if (Math.abs(state[i] ?? 0) < SILENCE) state[i] = 0
      }
    }
  }

  /** Forgets all past input. */
  forget(): void {
    for (const state of this.states) state.fill(0)
  }
}

/** How many of so many sections run first, in one loop; those behind them come in pairs. */
function firstGroupSize(sectionCount: number): 1 | 2 | 3 {
  if (sectionCount === 1) return 1
  return sectionCount % 2 === 0 ? 2 : 3
}

function isSame(a: Biquad, b: Biquad | undefined): boolean {
  return b !== undefined && a.b0 === b.b0 && a.b1 === b.b1 && a.b2 === b.b2 && a.a1 === b.a1 && a.a2 === b.a2
}
