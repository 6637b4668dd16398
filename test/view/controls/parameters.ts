import {
  bandParameters,
  type NumberParameter,
  type Parameter,
  stageDefinitions,
  stageKinds,
} from '../../../src/core'

/** Every number that anything on the bench can be set to, by a name to tell them apart. */
export const numberParameters: readonly (readonly [name: string, parameter: NumberParameter])[] = [
  ...stageKinds.flatMap((kind) => numbersIn(kind, stageDefinitions[kind].parameters)),
  ...numbersIn('band', bandParameters),
]

function numbersIn(owner: string, parameters: object): [string, NumberParameter][] {
  const rows: [string, Parameter][] = Object.entries(parameters)
  return rows.flatMap(([key, parameter]): [string, NumberParameter][] =>
    parameter.type === 'number' ? [[`${owner} ${key}`, parameter]] : [],
  )
}

/** The number parameter of that name. */
export function numberParameter(name: string): NumberParameter {
  const found = numberParameters.find(([known]) => known === name)
  if (!found) throw new RangeError(`no number parameter "${name}"`)
  return found[1]
}
