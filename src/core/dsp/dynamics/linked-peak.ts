/**
 * Writes the largest magnitude over all channels into `levels`, frame by frame: channels linked by their
 * maximum, so that a stereo image stands still while its level is held.
 * @param from first frame to read in each channel
 * @param count frames to read, and values to write from index 0
 */
export function linkedPeak(
  channels: readonly Float32Array[],
  from: number,
  count: number,
  levels: Float64Array,
): void {
  const [first] = channels
  if (!first) return
  for (let n = 0; n < count; n++) levels[n] = Math.abs(first[from + n] ?? 0)
  for (let c = 1; c < channels.length; c++) {
    const samples = channels[c]
    if (!samples) continue
    for (let n = 0; n < count; n++) {
      const magnitude = Math.abs(samples[from + n] ?? 0)
      if (magnitude > (levels[n] ?? 0)) levels[n] = magnitude
    }
  }
}
