import { whiteNoise } from './random'
import { sampleRate } from './track'

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

/** Adds a tone. Each partial is a rotating pair of numbers, which is a sine without calls of sin. */
export function addTone(target: StereoBuffer, tone: Tone): void {
  const first = Math.round(tone.startSeconds * sampleRate)
  const length = Math.min(Math.round(tone.lengthSeconds * sampleRate), target[0].length - first)
  tone.partials.forEach((partialGain, index) => {
    const angle = (2 * Math.PI * tone.frequencyHz * (index + 1)) / sampleRate
    const fade = Math.exp(-(1 + 0.6 * index) / (tone.decaySeconds * sampleRate))
    const turnCos = fade * Math.cos(angle)
    const turnSin = fade * Math.sin(angle)
    let cosine = partialGain * tone.gain
    let sine = 0
    for (let i = 0; i < length; i += 1) {
      const edge = Math.min(1, i / (attackSeconds * sampleRate), (length - i) / (releaseSeconds * sampleRate))
      addPanned(target, first + i, sine * edge, tone.pan)
      const turned = cosine * turnCos - sine * turnSin
      sine = sine * turnCos + cosine * turnSin
      cosine = turned
    }
  })
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
