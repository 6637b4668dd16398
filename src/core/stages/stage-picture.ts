import type { StaticCurve } from '../dsp/dynamics/gain-computer'

/** What a de-esser acts on: levels above the crossover, by this static curve, by at most `rangeDb`. */
export interface SibilanceDetection extends StaticCurve {
  readonly crossoverHz: number
  readonly rangeDb: number
}

/** What a stage's settings look like, as data to draw. */
export type StagePicture =
  /** Output level against input level once the gain has settled, without makeup. */
  | { readonly kind: 'static-curve'; readonly curve: StaticCurve }
  /** Output sample against input sample, both from -1 to 1, before mix and output level. */
  | {
      readonly kind: 'transfer-curve'
      readonly outputAt: (input: number) => number
      /** What the curve looks like, for those who cannot see it. */
      readonly sentence: string
    }
  /** The level above a crossover against a threshold, over the spectrum of the take. */
  | { readonly kind: 'sibilance'; readonly detection: SibilanceDetection }
  /** Loudness and true peak in front of the stage and behind it. */
  | { readonly kind: 'level-change' }

export type StagePictureKind = StagePicture['kind']
