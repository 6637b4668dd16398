import { parseArgs } from 'node:util'
import { type EngineName, engineNames } from './drive/engine'
import { parts } from './parts'
import type { Counts } from './parts/part'
import { type Sink, sinks } from './sound-output'

/** What a run is asked for. */
export interface Options {
  readonly engines: readonly EngineName[]
  readonly parts: readonly string[]
  readonly counts: Counts
  readonly sink: Sink
  /** Of a build that is served already; null to build and serve this one. */
  readonly address: string | null
}

export const USAGE = `npm run engines -- [options]
  --engines chromium,firefox,webkit   which engines, one after another
  --parts ${Object.keys(parts).join(',')}
  --plays 5                           first presses of play in each engine
  --loads 5                           loads in each engine
  --sink steady                       steady: as a sound card; bursts: up to two seconds of sound at once
  --address http://127.0.0.1:4173/    a build that is served already`

/** @throws TypeError for what is none of the options, or a value that is none of an option's */
export function parseOptions(words: readonly string[]): Options {
  const { values } = parseArgs({
    args: [...words],
    options: {
      engines: { type: 'string', default: engineNames.join(',') },
      parts: { type: 'string', default: Object.keys(parts).join(',') },
      plays: { type: 'string', default: '5' },
      loads: { type: 'string', default: '5' },
      sink: { type: 'string', default: 'steady' },
      address: { type: 'string' },
    },
  })
  return {
    engines: values.engines.split(',').map((name) => oneOf(engineNames, name, 'engine')),
    parts: values.parts.split(',').map((name) => oneOf(Object.keys(parts), name, 'part')),
    counts: { plays: countOf(values.plays, 'plays'), loads: countOf(values.loads, 'loads') },
    sink: oneOf(sinks, values.sink, 'sink'),
    address: values.address ?? null,
  }
}

function oneOf<Name extends string>(names: readonly Name[], given: string, what: string): Name {
  const name = names.find((known) => known === given)
  if (name === undefined) throw new TypeError(`no ${what} "${given}": there are ${names.join(', ')}`)
  return name
}

function countOf(given: string, what: string): number {
  const count = Number(given)
  if (!(Number.isInteger(count) && count > 0))
    throw new TypeError(`--${what} ${given}: a whole number above 0 is needed`)
  return count
}
