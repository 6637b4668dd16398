import {
  chainOf,
  defaultStage,
  renderChain,
  type SettingsByKind,
  type Sound,
  type StageKind,
} from '../../src/core'
import type { BandSettings, EqualiserDesign } from '../../src/core/stages/equaliser/band'

/** A stage at its defaults but for `settings`. */
export function stageWith<Kind extends StageKind>(
  kind: Kind,
  settings: Partial<SettingsByKind[Kind]>,
  id: string = kind,
) {
  const stage = defaultStage(kind, id)
  return { ...stage, settings: { ...stage.settings, ...settings } }
}

/** A band that is on, a 0 dB bell unless said otherwise. */
export function band(settings: Partial<BandSettings>): BandSettings {
  return { on: true, shape: 'bell', frequencyHz: 1000, gainDb: 0, q: 1, slopeDbPerOctave: 12, ...settings }
}

/** An equaliser of the given bands. */
export function equaliserWith(bands: readonly BandSettings[], design: EqualiserDesign = 'matched') {
  return stageWith('equaliser', { bands, design })
}

/** `sound` through the given stages. */
export function through(sound: Sound, ...stages: Parameters<typeof chainOf>[0]): Sound {
  return renderChain(sound, chainOf(stages)).sound
}

/** One channel of `sound`; an empty one where it has none. */
export function channel(sound: Sound, index = 0): Float32Array {
  return sound.channels[index] ?? new Float32Array(0)
}

/** A sound of one channel whose samples are worked out from their index. */
export function monoOf(sampleRate: number, frames: number, sampleAt: (frame: number) => number): Sound {
  return { sampleRate, channels: [Float32Array.from({ length: frames }, (_, n) => sampleAt(n))] }
}

/** Full-scale impulse at frame `at`. */
export function impulse(sampleRate: number, frames: number, at = 0): Sound {
  return monoOf(sampleRate, frames, (n) => (n === at ? 1 : 0))
}
