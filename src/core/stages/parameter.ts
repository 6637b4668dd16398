/** Units as they are written behind a number. '' is a plain number, 'ratio' prints as n : 1. */
export type Unit = 'dB' | 'dBFS' | 'Hz' | 'ms' | '%' | 'ratio' | ''

/** A number the user sets. Ranges include both ends. */
export interface NumberParameter {
  readonly type: 'number'
  readonly label: string
  readonly unit: Unit
  readonly min: number
  readonly max: number
  readonly default: number
  /** How a control travels: evenly, by equal ratios, or (from 1 up to Infinity) by equal steps of 1 - 1/x. */
  readonly scale: 'linear' | 'logarithmic' | 'reciprocal'
  /** A small move of the control, in the parameter's unit; on other scales, as a share of its travel. */
  readonly step: number
  /** Digits behind the decimal point. */
  readonly digits: number
  /** What the smallest value means, where it means more than a number. */
  readonly minMeans?: string
  /** What is shown is the value times this (0..1 shown as a percentage: 100). */
  readonly displayFactor?: number
  /** Seldom set: shown only when it is asked for. */
  readonly rare?: true
  /** One sentence on what it does. */
  readonly help: string
}

/** One of a few values. */
export interface ChoiceParameter<Value extends string | number = string | number> {
  readonly type: 'choice'
  readonly label: string
  readonly options: readonly { readonly value: Value; readonly label: string }[]
  readonly default: Value
  /** Seldom set: shown only when it is asked for. */
  readonly rare?: true
  readonly help: string
}

/** On or off. */
export interface SwitchParameter {
  readonly type: 'switch'
  readonly label: string
  readonly default: boolean
  readonly help: string
}

/** A list of items that each have the same parameters, such as the bands of an equaliser. */
export interface ListParameter<Item = object> {
  readonly type: 'list'
  readonly label: string
  /** What one item is called. */
  readonly itemLabel: string
  readonly item: ParameterTable<Item>
  readonly maxItems: number
  readonly default: readonly Item[]
  readonly help: string
}

export type Parameter = NumberParameter | ChoiceParameter | SwitchParameter | ListParameter

/** The kind of parameter that a settings value of type `Value` needs. */
export type ParameterFor<Value> = Value extends boolean
  ? SwitchParameter
  : Value extends string
    ? ChoiceParameter<string>
    : Value extends number
      ? NumberParameter | ChoiceParameter<number>
      : Value extends readonly (infer Item)[]
        ? ListParameter<Item>
        : never

/** One row for each setting: a setting without a row, or a row without a setting, does not compile. */
export type ParameterTable<Settings> = { readonly [Key in keyof Settings]: ParameterFor<Settings[Key]> }
