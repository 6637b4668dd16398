import type { Biquad } from './biquad'
import { DIRECT_STRIDE, prepareSection, runSection, runThreeSections, runTwoSections } from './direct-form'

/** State below this (-400 dB) becomes 0, before it slows the processor down as subnormals. */
const SILENCE = 1e-20

/** Second-order sections in series that stand still, and what they hold of the past, for each channel. */
export class SectionBank {
  private readonly coefficients: Float64Array
  private readonly states: readonly Float64Array[]
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

  /** Filters the first `count` values of `buffer` in place, as the next of `channel`. */
  run(buffer: Float64Array, channel: number, count: number): void {
    const { coefficients } = this
    const sectionCount = this.sections.length
    const state = this.states[channel]
    if (!state) return
    let k = 0
    for (; k + 2 < sectionCount; k += 3) runThreeSections(buffer, coefficients, k, state, count)
    if (k + 1 < sectionCount) runTwoSections(buffer, coefficients, k, state, count)
    else if (k < sectionCount) runSection(buffer, coefficients, k, state, count)
  }

  /** Lets state that has all but died away be 0. */
  hush(): void {
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

function isSame(a: Biquad, b: Biquad | undefined): boolean {
  return b !== undefined && a.b0 === b.b0 && a.b1 === b.b1 && a.b2 === b.b2 && a.a1 === b.a1 && a.a2 === b.a2
}
