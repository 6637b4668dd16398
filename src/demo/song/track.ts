/** Frames per second of everything in the demo, Hz. */
export const sampleRate = 48_000
/** Values per second of a control track, Hz. D. H. Klatt (JASA 67(3), 1980) uses 200; portamento wants more. */
export const controlRate = 1000
/** Frames between two values of a control track. */
export const hopFrames = sampleRate / controlRate

/** A control track for `seconds` of sound, one value more than whole hops so that the end has a neighbour. */
export function newTrack(seconds: number): Float64Array {
  return new Float64Array(Math.ceil(seconds * controlRate) + 1)
}

/** Sets the track to `value` from `startSeconds` up to `endSeconds`. */
export function fillTrack(
  track: Float64Array,
  startSeconds: number,
  endSeconds: number,
  value: number,
): void {
  track.fill(value, Math.round(startSeconds * controlRate), Math.round(endSeconds * controlRate))
}

/**
 * `track` smoothed by two centred moving averages of `seconds` each: a step becomes an S-shaped glide of twice
 * that length, half of it before the step, as the tongue sets out for the next sound before it arrives.
 */
export function smoothed(track: Float64Array, seconds: number): Float64Array {
  const reach = Math.max(1, Math.round((seconds * controlRate) / 2))
  return movingAverage(movingAverage(track, reach), reach)
}

function movingAverage(track: Float64Array, reach: number): Float64Array {
  const last = track.length - 1
  const at = (index: number) => track[Math.min(last, Math.max(0, index))] ?? 0
  const result = new Float64Array(track.length)
  let sum = 0
  for (let index = -reach; index <= reach; index += 1) sum += at(index)
  for (let index = 0; index <= last; index += 1) {
    result[index] = sum / (2 * reach + 1)
    sum += at(index + reach + 1) - at(index - reach)
  }
  return result
}

/** The track at the sample rate: `frames` values, straight lines between the given ones. */
export function atSampleRate(track: Float64Array, frames: number): Float32Array {
  const result = new Float32Array(frames)
  for (let frame = 0; frame < frames; frame += 1) {
    const index = Math.floor(frame / hopFrames)
    const from = track[index] ?? 0
    const to = track[index + 1] ?? from
    result[frame] = from + (to - from) * (frame / hopFrames - index)
  }
  return result
}
