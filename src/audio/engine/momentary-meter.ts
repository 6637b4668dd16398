import { type KWeighting, kWeighting } from '../../core'

/** Energies are added up in blocks of 10 ms, and the window moves on by one of them. */
const BLOCKS_PER_SECOND = 100
/** 400 ms: momentary loudness, EBU Tech 3341. */
const WINDOW_BLOCKS = 40

/** State below this is silence: it is set to 0 long before it becomes subnormal. */
const FLUSHED = 1e-20

/**
 * Momentary loudness of sound that streams: K-weighted power of the last 400 ms, ITU-R BS.1770-5, Annex 1, equations
 * 1 and 2, for one or two channels. `process` allocates nothing.
 */
export class MomentaryMeter {
  private readonly filter: KWeighting
  private readonly states: readonly Float64Array[]
  private readonly energies = new Float64Array(WINDOW_BLOCKS)
  private readonly blockFrames: number
  private block = 0
  private framesInBlock = 0

  /**
   * @param sampleRate Hz, 8000 to 192000
   * @param channelWeight what the power of each channel counts: 1 for channels of their own, 1 / channelCount where
   *   all of them play one
   */
  constructor(
    sampleRate: number,
    channelCount: number,
    private readonly channelWeight = 1,
  ) {
    this.filter = kWeighting(sampleRate)
    this.states = Array.from({ length: channelCount }, () => new Float64Array(4))
    this.blockFrames = Math.round(sampleRate / BLOCKS_PER_SECOND)
  }

  /** LUFS of the last 400 ms, that began in silence; -Infinity while nothing is there. */
  get lufs(): number {
    const energy = this.energies.reduce((sum, value) => sum + value, 0)
    return -0.691 + 10 * Math.log10((this.channelWeight * energy) / (WINDOW_BLOCKS * this.blockFrames))
  }

  /** Takes in the first `frames` of as many channels as the meter was made for. */
  process(channels: readonly Float32Array[], frames: number): void {
    let done = 0
    while (done < frames) {
      const count = Math.min(frames - done, this.blockFrames - this.framesInBlock)
      if (this.framesInBlock === 0) this.energies[this.block] = 0
      let energy = 0
      for (let c = 0; c < this.states.length; c++) {
        const samples = channels[c]
        const state = this.states[c]
        if (samples && state) energy += this.weightedEnergy(samples, state, done, count)
      }
      this.energies[this.block] = (this.energies[this.block] ?? 0) + energy
      this.framesInBlock += count
      if (this.framesInBlock === this.blockFrames) {
        this.framesInBlock = 0
        this.block = (this.block + 1) % WINDOW_BLOCKS
      }
      done += count
    }
  }

  /** Runs one channel through shelf and high-pass, transposed direct form II. */
  private weightedEnergy(samples: Float32Array, state: Float64Array, from: number, count: number): number {
    const { shelf, highPass } = this.filter
    let s1 = state[0] ?? 0
    let s2 = state[1] ?? 0
    let t1 = state[2] ?? 0
    let t2 = state[3] ?? 0
    let energy = 0
    for (let n = from; n < from + count; n++) {
      const x = samples[n] ?? 0
      const shelved = shelf.b0 * x + s1
      s1 = shelf.b1 * x - shelf.a1 * shelved + s2
      s2 = shelf.b2 * x - shelf.a2 * shelved
      const weighted = highPass.b0 * shelved + t1
      t1 = highPass.b1 * shelved - highPass.a1 * weighted + t2
      t2 = highPass.b2 * shelved - highPass.a2 * weighted
      energy += weighted * weighted
    }
    state[0] = flushed(s1)
    state[1] = flushed(s2)
    state[2] = flushed(t1)
    state[3] = flushed(t2)
    return energy
  }
}

function flushed(value: number): number {
  return value < FLUSHED && value > -FLUSHED ? 0 : value
}
