import type { ParameterTable } from './parameter'

/** What there is to know about one kind of stage without running it: what the page needs. */
export interface StageDefinition<Settings extends object> {
  /** Its name on the screen. */
  readonly label: string
  /** One sentence on what it is for. */
  readonly purpose: string
  /** The one table from which controls, validation, tests and help are made. */
  readonly parameters: ParameterTable<Settings>
  /** Whether `process` tells by how much gain is reduced. */
  readonly reducesGain: boolean
  /** Magnitude in dB at frequencies in Hz, for linear stages; `null` for those whose gain moves with level. */
  readonly magnitudeDb:
    | ((settings: Settings, frequenciesHz: ArrayLike<number>, sampleRate: number) => Float64Array)
    | null
  /** One plain sentence of what it does at these settings. */
  describe(settings: Settings): string
}
