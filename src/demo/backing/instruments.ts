import { whiteNoise } from '../../core/primitives'
import { sampleRate } from '../song/track'

/** Left and right. */
export type StereoBuffer = readonly [Float64Array, Float64Array]

/** A plucked or struck tone: sine partials that die away, the higher the faster. */
export interface Tone {
  readonly frequencyHz: number
  readonly startSeconds: number
  readonly lengthSeconds: number
  readonly gain: number
  /** -1 left to 1 right. */
  readonly pan: number
  /** Gains of the harmonics from the first up. */
  readonly partials: readonly number[]
  /** Time for the first partial to fall to 1/e. */
  readonly decaySeconds: number
}

const attackSeconds = 0.008
const releaseSeconds = 0.06

/** Adds a tone. */
export function addTone(target: StereoBuffer, tone: Tone): void {
  const first = Math.round(tone.startSeconds * sampleRate)
  const length = Math.min(Math.round(tone.lengthSeconds * sampleRate), target[0].length - first)
  const samples = new Float64Array(Math.max(0, length))
  tone.partials.forEach((gain, index) => {
    addPartial(
      samples,
      tone.frequencyHz * (index + 1),
      gain * tone.gain,
      tone.decaySeconds / (1 + 0.6 * index),
    )
  })
  const attack = 1 / (attackSeconds * sampleRate)
  const release = 1 / (releaseSeconds * sampleRate)
  for (let i = 0; i < length; i += 1) {
    const edge = Math.min(1, i * attack, (length - i) * release)
    addPanned(target, first + i, (samples[i] ?? 0) * edge, tone.pan)
  }
}

/** Adds a dying sine, as a pair of numbers that rotates and shrinks: no calls of sin. */
function addPartial(samples: Float64Array, frequencyHz: number, gain: number, decaySeconds: number): void {
  const angle = (2 * Math.PI * frequencyHz) / sampleRate
  const fade = Math.exp(-1 / (decaySeconds * sampleRate))
  const turnCos = fade * Math.cos(angle)
  const turnSin = fade * Math.sin(angle)
  let cosine = gain
  let sine = 0
  for (let i = 0; i < samples.length; i += 1) {
    samples[i] = (samples[i] ?? 0) + sine
    const turned = cosine * turnCos - sine * turnSin
    sine = sine * turnCos + cosine * turnSin
    cosine = turned
  }
}

/** Adds a soft drum: a sine that falls from three times `frequencyHz` to it, and dies away. */
export function addDrum(target: StereoBuffer, startSeconds: number, frequencyHz: number, gain: number): void {
  const first = Math.round(startSeconds * sampleRate)
  const length = Math.min(Math.round(0.3 * sampleRate), target[0].length - first)
  let phase = 0
  for (let i = 0; i < length; i += 1) {
    const since = i / sampleRate
    phase += (frequencyHz * (1 + 2 * Math.exp(-since / 0.02))) / sampleRate
    const edge = Math.min(1, i / (0.002 * sampleRate), (length - i) / (0.02 * sampleRate))
    addPanned(target, first + i, gain * edge * Math.exp(-since / 0.09) * Math.sin(2 * Math.PI * phase), 0)
  }
}

/** A stroke on something that hisses: noise without its bottom, dying away in `decaySeconds`. */
export interface Stroke {
  readonly startSeconds: number
  readonly gain: number
  readonly pan: number
  readonly decaySeconds: number
}

/** Adds a stroke, its noise seeded by the frame it starts at, so that no two are alike; the difference of neighbouring samples is what takes the bottom out of the noise. */
export function addStroke(target: StereoBuffer, stroke: Stroke): void {
  const first = Math.round(stroke.startSeconds * sampleRate)
  const length = Math.min(Math.round(6 * stroke.decaySeconds * sampleRate), target[0].length - first)
  const noise = whiteNoise(Math.max(0, length), first)
  let last = 0
  noise.forEach((sample, i) => {
    const edge = Math.min(1, i / (0.003 * sampleRate))
    const fade = Math.exp(-i / (stroke.decaySeconds * sampleRate))
    addPanned(target, first + i, stroke.gain * edge * fade * (sample - last), stroke.pan)
    last = sample
  })
}

function addPanned(target: StereoBuffer, frame: number, sample: number, pan: number): void {
  const [left, right] = target
  left[frame] = (left[frame] ?? 0) + sample * (1 - Math.max(0, pan))
  right[frame] = (right[frame] ?? 0) + sample * (1 + Math.min(0, pan))
}
