/** +180 dB re full scale: far beyond all sound, far below where 32-bit floats end. */
const MOST = 1e9

/**
 * Keeps what leaves a stage within 180 dB above full scale, in place, so that boosts stacked on boosts can never
 * run over into infinity, of which the next stage would make "not a number" for ever.
 */
export function contain(channels: readonly Float32Array[], frames: number): void {
  for (let c = 0; c < channels.length; c++) {
    const samples = channels[c]
    if (!samples) continue
    for (let n = 0; n < frames; n++) {
      const sample = samples[n] ?? 0
      if (Math.abs(sample) > MOST) samples[n] = sample > 0 ? MOST : -MOST
    }
  }
}
