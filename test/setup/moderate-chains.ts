import fc from 'fast-check'
import { type ChainDoc, chainOf, parseChain, stageDefinitions } from '../../src/core'
import type { Parameter } from '../../src/core/stages/parameter'
import { positionOf, valueAt } from '../../src/view/controls/positions'
import { chains } from './random-chains'

/** How far from its default a control may stand, as a share of the way to where chance put it. */
const REACH = 0.25

/** `count` chains of one to four stages with settings such as a hand might choose, the same for the same seed. */
export function moderateChains(count: number, seed: number): ChainDoc[] {
  const wild = fc.sample(chains(undefined, { minLength: 1, maxLength: 4 }), { numRuns: count, seed })
  return wild.map(({ stages }) =>
    parseChain({
      ...chainOf([]),
      stages: stages.map((stage) => ({
        ...stage,
        settings: moderated(stage.settings, stageDefinitions[stage.kind].parameters),
      })),
    }),
  )
}

function moderated(settings: object, parameters: object): object {
  const rows = new Map<string, Parameter>(Object.entries(parameters))
  return Object.fromEntries(
    Object.entries(settings).map(([key, value]) => [key, moderatedValue(value, rows.get(key))]),
  )
}

function moderatedValue(value: unknown, parameter: Parameter | undefined): unknown {
  if (parameter?.type === 'number' && typeof value === 'number') {
    const usual = positionOf(parameter, parameter.default)
    return valueAt(parameter, usual + REACH * (positionOf(parameter, value) - usual))
  }
  if (parameter?.type === 'list' && Array.isArray(value)) {
    return value.slice(0, 5).map((item: object) => moderated(item, parameter.item))
  }
  return value
}
