/** +180 dB re full scale: far beyond all sound, far below where 32-bit floats end. */
const MOST = 1e9

/**
 * Keeps the output of a stage within 180 dB above full scale, in place, so that boosts stacked on boosts never overflow
 * to infinity, which would leave the next stage with NaN for good.
 */
export function contain(channels: readonly Float32Array[], frames: number): void {
  for (let c = 0; c < channels.length; c++) {
    const samples = channels[c]
    if (samples && exceeds(samples, frames)) clamp(samples, frames)
  }
}

/** Whether any of the first `count` values exceeds it: four at a time, since hardly any ever does. */
function exceeds(samples: Float32Array, count: number): boolean {
  let n = 0
  for (; n + 3 < count; n += 4) {
    const isAnyBeyond =
      Math.abs(samples[n] ?? 0) > MOST ||
      Math.abs(samples[n + 1] ?? 0) > MOST ||
      Math.abs(samples[n + 2] ?? 0) > MOST ||
      Math.abs(samples[n + 3] ?? 0) > MOST
    if (isAnyBeyond) return true
  }
  for (; n < count; n++) if (Math.abs(samples[n] ?? 0) > MOST) return true
  return false
}

function clamp(samples: Float32Array, count: number): void {
  for (let n = 0; n < count; n++) samples[n] = Math.min(MOST, Math.max(-MOST, samples[n] ?? 0))
}
