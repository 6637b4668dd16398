/** Sound in memory. Every channel has the same length; samples are linear, full scale = 1. */
export interface Sound {
  /** Frames per second, Hz. */
  readonly sampleRate: number
  /** One array of frames for each channel. */
  readonly channels: readonly Float32Array[]
}

/** Number of frames in each channel of `sound`; 0 when it has no channels. */
export function frameCount(sound: Sound): number {
  return sound.channels[0]?.length ?? 0
}

/** Length of `sound` in seconds. */
export function durationSeconds(sound: Sound): number {
  return frameCount(sound) / sound.sampleRate
}

/**
 * The part of `sound` from frame `from` up to, but not including, frame `to`.
 * The channels share memory with the original: read them, do not write to them.
 */
export function excerpt(sound: Sound, from: number, to: number): Sound {
  return {
    sampleRate: sound.sampleRate,
    channels: sound.channels.map((samples) => samples.subarray(from, to)),
  }
}
