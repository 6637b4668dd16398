import { dbToGain } from '../../core'
import { rms } from '../song/levels'

// Delays without common factors, so that the echoes do not fall together (M. R. Schroeder, "Natural Sounding
// Artificial Reverberation", JAES 10(3), 1962). The lengths, those of a small bare room, are our own.
const combFrames = [1151, 1327, 1559, 1801] as const
const allPassFrames = [337, 113] as const
const allPassGain = 0.6
/** Until the first echo. */
const gapFrames = 240

/**
 * Adds to `samples`, in place, the sound of a small room after M. R. Schroeder (JAES 10(3), 1962): four combs
 * side by side, then two all-passes. `decaySeconds` is the time to fall by 60 dB, `levelDb` the level of the
 * room against the voice, dB of RMS.
 */
export function addRoom(
  samples: Float32Array,
  sampleRate: number,
  decaySeconds: number,
  levelDb: number,
): void {
  const wet = new Float64Array(samples.length)
  for (const delay of combFrames) {
    const feedback = 10 ** ((-3 * delay) / (decaySeconds * sampleRate))
    const comb = new Float64Array(samples.length)
    for (let i = gapFrames + delay; i < samples.length; i += 1) {
      const echo = (samples[i - gapFrames - delay] ?? 0) + feedback * (comb[i - delay] ?? 0)
      comb[i] = echo
      wet[i] = (wet[i] ?? 0) + echo
    }
  }
  for (const delay of allPassFrames) diffuse(wet, delay)
  const scale = dbToGain(levelDb) * (rms(samples) / rms(wet) || 0)
  for (let i = 0; i < samples.length; i += 1) samples[i] = (samples[i] ?? 0) + scale * (wet[i] ?? 0)
}

function diffuse(samples: Float64Array, delay: number): void {
  const memory = new Float64Array(delay)
  for (let i = 0; i < samples.length; i += 1) {
    const stored = memory[i % delay] ?? 0
    const input = (samples[i] ?? 0) + allPassGain * stored
    memory[i % delay] = input
    samples[i] = stored - allPassGain * input
  }
}
