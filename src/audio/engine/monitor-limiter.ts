/** No peak leaves the monitor above this, whatever the settings: -1 dBFS. */
export const LIMITER_CEILING = 10 ** (-1 / 20)

const RELEASE_MS = 120

/**
 * Holds monitor peaks at or below {@link LIMITER_CEILING}. Turns down at once, for all channels alike, and comes
 * back slowly: it is there to protect ears, not to sound well, and never touches a delivered file.
 */
export class MonitorLimiter {
  private envelope = 0
  private readonly release: number

  constructor(sampleRate: number) {
    this.release = Math.exp(-1000 / (RELEASE_MS * sampleRate))
  }

  /** Guards the first `frames` of every channel in place. A value that is not a number comes out as silence. */
  process(channels: readonly Float32Array[], frames: number): void {
    let { envelope } = this
    for (let n = 0; n < frames; n++) {
      let peak = 0
      for (let c = 0; c < channels.length; c++) peak = Math.max(peak, Math.abs(channels[c]?.[n] ?? 0))
      if (!(peak < Number.POSITIVE_INFINITY)) {
        for (let c = 0; c < channels.length; c++) {
          const samples = channels[c]
          if (samples) samples[n] = 0
        }
        continue
      }
      envelope = Math.max(peak, envelope * this.release)
      if (envelope <= LIMITER_CEILING) continue
      const gain = LIMITER_CEILING / envelope
      for (let c = 0; c < channels.length; c++) {
        const samples = channels[c]
        if (samples)
          samples[n] = Math.max(-LIMITER_CEILING, Math.min(LIMITER_CEILING, (samples[n] ?? 0) * gain))
      }
    }
    this.envelope = envelope
  }
}
