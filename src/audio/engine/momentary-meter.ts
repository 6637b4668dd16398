import { KWeightedEnergy, powerToLufs } from '../../core/primitives'

/** Energies are added up in blocks of 10 ms, and the window moves on by one of them. */
const BLOCKS_PER_SECOND = 100
/** 400 ms: momentary loudness, EBU Tech 3341. */
const WINDOW_BLOCKS = 40

/**
 * Momentary loudness of sound that streams: K-weighted power of the last 400 ms, ITU-R BS.1770-5, Annex 1, equations
 * 1 and 2, for one or two channels. `process` allocates nothing.
 */
export class MomentaryMeter {
  private readonly weighted: KWeightedEnergy
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
    private readonly channelCount: number,
    channelWeight = 1,
  ) {
    this.weighted = new KWeightedEnergy(
      sampleRate,
      Array.from({ length: channelCount }, () => channelWeight),
    )
    this.blockFrames = Math.round(sampleRate / BLOCKS_PER_SECOND)
  }

  /** LUFS of the last 400 ms, that began in silence; -Infinity while nothing is there. */
  get lufs(): number {
    const energy = this.energies.reduce((sum, value) => sum + value, 0)
    return powerToLufs(energy / (WINDOW_BLOCKS * this.blockFrames)) ?? Number.NEGATIVE_INFINITY
  }

  /** Measures the first `frames` of as many channels as the meter was made for. */
  process(channels: readonly Float32Array[], frames: number): void {
    let done = 0
    while (done < frames) {
      const count = Math.min(frames - done, this.blockFrames - this.framesInBlock)
      if (this.framesInBlock === 0) this.energies[this.block] = 0
      let energy = 0
      for (let c = 0; c < this.channelCount; c++) {
        const samples = channels[c]
        if (samples) energy += this.weighted.next(c, samples, done, count)
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
}
