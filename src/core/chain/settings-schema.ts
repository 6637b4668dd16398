import * as v from 'valibot'
import type { ListParameter, NumberParameter, Parameter } from '../stages/parameter'

/** A validator for the settings that a parameter table describes: every key present, no other, all in range. */
export function settingsSchema(parameters: object): v.GenericSchema {
  const rows: [string, Parameter][] = Object.entries(parameters)
  return v.strictObject(
    Object.fromEntries(rows.map(([key, parameter]) => [key, parameterSchema(parameter)])),
    (issue) => (issue.expected === 'never' ? 'no such setting' : 'this setting to be there'),
  )
}

function parameterSchema(parameter: Parameter): v.GenericSchema {
  switch (parameter.type) {
    case 'number':
      return numberSchema(parameter)
    case 'choice': {
      const values = parameter.options.map(({ value }) => value)
      return v.picklist(values, `one of ${values.map((value) => JSON.stringify(value)).join(', ')}`)
    }
    case 'switch':
      return v.boolean('true or false')
    case 'list':
      return listSchema(parameter)
  }
}

function numberSchema({ min, max, unit }: NumberParameter): v.GenericSchema {
  const bounded = max < Number.POSITIVE_INFINITY
  const expected = `a number from ${min} ${bounded ? `to ${max}` : 'up, or "infinity"'}${unit && unit !== 'ratio' ? ` (${unit})` : ''}`
  const number = v.pipe(v.number(expected), v.minValue(min, expected), v.maxValue(max, expected))
  if (bounded) return number
  const infinity = v.pipe(
    v.literal('infinity', expected),
    v.transform(() => Number.POSITIVE_INFINITY),
  )
  return v.union([number, infinity], expected)
}

function listSchema({ item, maxItems }: ListParameter): v.GenericSchema {
  return boundedList(settingsSchema(item), {
    maxItems,
    expected: 'a list',
    expectedCount: `at most ${maxItems} items`,
  })
}

/** A validator for a list that counts its items before it checks any: a list that is too long is refused at once. */
export function boundedList<Item extends v.GenericSchema>(
  item: Item,
  { maxItems, expected, expectedCount }: { maxItems: number; expected: string; expectedCount: string },
) {
  return v.pipe(
    v.custom<unknown[]>(Array.isArray, expected),
    v.maxLength(maxItems, expectedCount),
    v.array(item, expected),
  )
}
