import type { StaticCurve } from '../dsp/dynamics/gain-computer'
import type { BandSettings, EqualiserDesign } from './equaliser/band'
import type { ListParameter, NumberParameter, ParameterTable } from './parameter'
import type { StagePicture } from './stage-picture'

/** What there is to know about one kind of stage without running it: what the page needs. */
export interface StageDefinition<Settings extends object> {
  /** Its name on the screen. */
  readonly label: string
  /** One sentence on what it is for. */
  readonly purpose: string
  /** The one table from which controls, validation, tests and help are made. */
  readonly parameters: ParameterTable<Settings>
  /** Whether the processor reports gain reduction. */
  readonly reducesGain: boolean
  /** Magnitude in dB at frequencies in Hz, for linear stages; `null` for those whose gain depends on level. */
  readonly magnitudeDb:
    | ((settings: Settings, frequenciesHz: ArrayLike<number>, sampleRate: number) => Float64Array)
    | null
  /** One plain sentence on what it does with these settings. */
  describe(settings: Settings): string
  /**
   * Frames by which the processor's output lags its input, on or off.
   * @param maxLookaheadMs delay to reserve for lookahead, whatever lookahead is set; without it, the lookahead set
   */
  latencyFrames(settings: Settings, sampleRate: number, maxLookaheadMs?: number): number
  /**
   * These settings, changed so that the stage never finds anything to do and still filters what it always filters.
   * `null` where an idle stage passes its input as it is, delayed: bypassing it shows the same.
   */
  readonly idleSettings: ((settings: Settings) => Settings) | null
  /** The picture beside its settings; `null` where its magnitude on the common curve shows it all. */
  readonly picture: ((settings: Settings) => StagePicture) | null
  /** The list in its settings whose items can be switched and compared one by one; `null` if there is none. */
  readonly items: StageItems<Settings> | null
  /** How the filter bands in its settings are read and written, to be drawn, dragged and swept; `null` if there are none. */
  readonly bands: StageBands<Settings> | null
  /** The level that it compares with a threshold; `null` for stages that compare none. */
  readonly detector: StageDetector<Settings> | null
  /** The gain that can be worked out to leave the take as loud as it came; `null` if there is none. */
  readonly makeup: StageMakeup<Settings> | null
}

/** A number in the settings of a stage: its key there, and its row in the table. */
export interface KeyedParameter<Settings extends object> {
  readonly key: keyof Settings & string
  readonly parameter: NumberParameter
}

/** What a stage detects, and the settings that are set by looking at it. */
export interface StageDetector<Settings extends object> {
  readonly threshold: KeyedParameter<Settings>
  readonly knee: KeyedParameter<Settings>
  /** The frequency above which the level is detected; `null` where all of the sound is. */
  readonly crossover: KeyedParameter<Settings> | null
  curve(settings: Settings): StaticCurve
  /** These settings with every one at its default that leaves the level along the take as it is. */
  levelSettings(settings: Settings): Settings
}

/** One item of a list in a stage's settings. */
export interface StageItem {
  readonly on: boolean
}

/** A list in a stage's settings whose items can be switched and compared one by one. */
export interface StageItems<Settings extends object> {
  /** Its row in the table: what one item is called, and how many there may be. */
  readonly parameter: ListParameter
  of(settings: Settings): readonly StageItem[]
  /** The settings with one item switched on or off; unchanged where there is no such item. */
  switched(settings: Settings, index: number, on: boolean): Settings
}

/** Filter bands in a stage's settings, in series. */
export interface StageBands<Settings extends object> {
  of(settings: Settings): readonly BandSettings[]
  replaced(settings: Settings, bands: readonly BandSettings[]): Settings
  design(settings: Settings): EqualiserDesign
}

/** Makeup gain of a stage, dB. */
export interface StageMakeup<Settings extends object> {
  /** Its key in the settings. */
  readonly key: keyof Settings & string
  readonly parameter: NumberParameter
  /** Share of the output that it acts on, 0 to 1: the rest is dry. */
  share(settings: Settings): number
  replaced(settings: Settings, makeupDb: number): Settings
}
