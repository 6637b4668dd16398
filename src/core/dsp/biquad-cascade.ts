import { type Biquad, IDENTITY } from './biquad'

/** Frames worked on at a time, small enough to stay in the processor's nearest cache. */
const CHUNK_FRAMES = 128

/** Coefficients in a row: b0 b1 b2 a1 a2. */
const STRIDE = 5

/** State whose squares sum below this (-400 dB) becomes 0, before it slows the processor down as subnormals. */
const SILENCE_SQUARED = 1e-40

/**
 * Second-order sections in series, the same for every channel, in transposed direct form II with 64-bit state.
 * New coefficients are reached along a straight line, frame by frame: two stable sections have only stable ones
 * between them, because the stability region in the (a1, a2) plane is a triangle.
 */
export class BiquadCascade {
  private readonly scratch = new Float64Array(CHUNK_FRAMES)
  private readonly current: Float64Array
  private readonly target: Float64Array
  private readonly step: Float64Array
  private readonly states: readonly Float64Array[]
  private rampFramesLeft = 0
  private started = false
  /** Sections up to the last that was ever given; those behind it have never changed anything. */
  private usedSections = 0

  /**
   * @param maxSections the most sections `set` will be given; missing ones change nothing.
   * @param channelCount channels that `process` will be given.
   * @param rampFrames frames it takes to reach new coefficients.
   */
  constructor(
    private readonly maxSections: number,
    channelCount: number,
    private readonly rampFrames: number,
  ) {
    this.current = new Float64Array(maxSections * STRIDE)
    this.target = new Float64Array(maxSections * STRIDE)
    this.step = new Float64Array(maxSections * STRIDE)
    this.states = Array.from({ length: channelCount }, () => new Float64Array(maxSections * 2))
  }

  /** Goes to new sections, at once before the first frame and along a ramp after it. */
  set(sections: readonly Biquad[]): void {
    this.usedSections = Math.max(this.usedSections, sections.length)
    for (let k = 0; k < this.maxSections; k++) {
      const { b0, b1, b2, a1, a2 } = sections[k] ?? IDENTITY
      this.target.set([b0, b1, b2, a1, a2], k * STRIDE)
    }
    if (this.started && this.rampFrames > 0) {
      this.rampFramesLeft = this.rampFrames
      this.step.forEach((_, i) => {
        this.step[i] = ((this.target[i] ?? 0) - (this.current[i] ?? 0)) / this.rampFrames
      })
    } else {
      this.current.set(this.target)
    }
  }

  /** Filters `frames` of every channel in place, from frame `start` on. */
  process(channels: readonly Float32Array[], frames: number, start = 0): void {
    this.started = true
    const end = start + frames
    let from = start
    while (from < end) {
      const left = this.rampFramesLeft
      const count = Math.min(CHUNK_FRAMES, end - from, left > 0 ? left : CHUNK_FRAMES)
      for (let c = 0; c < channels.length; c++) {
        const samples = channels[c]
        const state = this.states[c]
        if (samples && state) this.processChunk(samples, state, from, count, left > 0)
      }
      if (left > 0) this.advanceRamp(count)
      from += count
    }
  }

  /** Forgets all past input and finishes any ramp. */
  reset(): void {
    for (const state of this.states) state.fill(0)
    this.current.set(this.target)
    this.rampFramesLeft = 0
    this.started = false
  }

  private processChunk(
    samples: Float32Array,
    state: Float64Array,
    from: number,
    count: number,
    ramping: boolean,
  ): void {
    const { scratch, current } = this
    let touched = false
    let waiting = -1
    for (let k = 0; k < this.usedSections; k++) {
      if (!ramping && this.changesNothing(k, state)) continue
      if (!touched) {
        for (let n = 0; n < count; n++) scratch[n] = samples[from + n] ?? 0
        touched = true
      }
      if (ramping) {
        this.runRampingSection(k, state, count)
      } else if (waiting < 0) {
        waiting = k
      } else {
        runTwoSections(scratch, current, waiting, k, state, count)
        waiting = -1
      }
    }
    if (waiting >= 0) runSection(scratch, current, waiting, state, count)
    if (!touched) return
    for (let n = 0; n < count; n++) samples[from + n] = scratch[n] ?? 0
  }

  /** Numerator equal to denominator and nothing left ringing: the output would be the input, bit for bit. */
  private changesNothing(k: number, state: Float64Array): boolean {
    const c = this.current
    const i = k * STRIDE
    return (
      c[i] === 1 &&
      c[i + 1] === c[i + 3] &&
      c[i + 2] === c[i + 4] &&
      state[k * 2] === 0 &&
      state[k * 2 + 1] === 0
    )
  }

  private runRampingSection(k: number, state: Float64Array, count: number): void {
    const { scratch, current, step } = this
    const i = k * STRIDE
    let b0 = current[i] ?? 0
    let b1 = current[i + 1] ?? 0
    let b2 = current[i + 2] ?? 0
    let a1 = current[i + 3] ?? 0
    let a2 = current[i + 4] ?? 0
    const db0 = step[i] ?? 0
    const db1 = step[i + 1] ?? 0
    const db2 = step[i + 2] ?? 0
    const da1 = step[i + 3] ?? 0
    const da2 = step[i + 4] ?? 0
    let s1 = state[k * 2] ?? 0
    let s2 = state[k * 2 + 1] ?? 0
    for (let n = 0; n < count; n++) {
      b0 += db0
      b1 += db1
      b2 += db2
      a1 += da1
      a2 += da2
      const x = scratch[n] ?? 0
      const y = b0 * x + s1
      s1 = b1 * x - a1 * y + s2
      s2 = b2 * x - a2 * y
      if (s1 * s1 + s2 * s2 < SILENCE_SQUARED) s1 = s2 = 0
      scratch[n] = y
    }
    state[k * 2] = s1
    state[k * 2 + 1] = s2
  }

  /** Adds frame by frame, as the sections did, so that block cuts leave the same bits. */
  private advanceRamp(count: number): void {
    const { current, step } = this
    this.rampFramesLeft -= count
    if (this.rampFramesLeft === 0) {
      current.set(this.target)
      return
    }
    for (let i = 0; i < current.length; i++) {
      let value = current[i] ?? 0
      const increment = step[i] ?? 0
      for (let n = 0; n < count; n++) value += increment
      current[i] = value
    }
  }
}

/** Section `k` over the first `count` values of `buffer`, in place. */
function runSection(
  buffer: Float64Array,
  c: Float64Array,
  k: number,
  state: Float64Array,
  count: number,
): void {
  const i = k * STRIDE
  const b0 = c[i] ?? 0
  const b1 = c[i + 1] ?? 0
  const b2 = c[i + 2] ?? 0
  const a1 = c[i + 3] ?? 0
  const a2 = c[i + 4] ?? 0
  let s1 = state[k * 2] ?? 0
  let s2 = state[k * 2 + 1] ?? 0
  for (let n = 0; n < count; n++) {
    const x = buffer[n] ?? 0
    const y = b0 * x + s1
    s1 = b1 * x - a1 * y + s2
    s2 = b2 * x - a2 * y
    if (s1 * s1 + s2 * s2 < SILENCE_SQUARED) s1 = s2 = 0
    buffer[n] = y
  }
  state[k * 2] = s1
  state[k * 2 + 1] = s2
}

/**
 * Sections `k` and `l` in series. Each section waits for its own last output; two in one loop wait at the same
 * time, which takes little longer than one.
 */
function runTwoSections(
  buffer: Float64Array,
  c: Float64Array,
  k: number,
  l: number,
  state: Float64Array,
  count: number,
): void {
  const i = k * STRIDE
  const j = l * STRIDE
  const b0 = c[i] ?? 0
  const b1 = c[i + 1] ?? 0
  const b2 = c[i + 2] ?? 0
  const a1 = c[i + 3] ?? 0
  const a2 = c[i + 4] ?? 0
  const d0 = c[j] ?? 0
  const d1 = c[j + 1] ?? 0
  const d2 = c[j + 2] ?? 0
  const e1 = c[j + 3] ?? 0
  const e2 = c[j + 4] ?? 0
  let s1 = state[k * 2] ?? 0
  let s2 = state[k * 2 + 1] ?? 0
  let t1 = state[l * 2] ?? 0
  let t2 = state[l * 2 + 1] ?? 0
  for (let n = 0; n < count; n++) {
    const x = buffer[n] ?? 0
    const y = b0 * x + s1
    s1 = b1 * x - a1 * y + s2
    s2 = b2 * x - a2 * y
    if (s1 * s1 + s2 * s2 < SILENCE_SQUARED) s1 = s2 = 0
    const z = d0 * y + t1
    t1 = d1 * y - e1 * z + t2
    t2 = d2 * y - e2 * z
    if (t1 * t1 + t2 * t2 < SILENCE_SQUARED) t1 = t2 = 0
    buffer[n] = z
  }
  state[k * 2] = s1
  state[k * 2 + 1] = s2
  state[l * 2] = t1
  state[l * 2 + 1] = t2
}
