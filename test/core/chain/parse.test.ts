import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  ChainError,
  chainOf,
  chainToJson,
  defaultStage,
  MAX_STAGES,
  parseChain,
  stageKinds,
} from '../../../src/core'
import { equaliserWith, stageWith } from '../../setup/chains'
import { chainJson, holds, SEED } from '../../setup/random-chains'

/** A valid chain of every kind, as JSON: equaliser, compressor, ... */
function everyKind(): unknown {
  return JSON.parse(chainToJson(chainOf(stageKinds.map((kind) => defaultStage(kind)))))
}

/** The error that `json` meets. */
function refusal(json: unknown): ChainError {
  try {
    parseChain(json)
  } catch (error) {
    if (error instanceof ChainError) return error
    throw error
  }
  throw new Error('parsed')
}

describe(`parseChain (seed ${SEED})`, () => {
  it('gives back any chain that chainToJson wrote', () => {
    holds(chainJson(stageKinds, { maxLength: 6 }), 150, (json) => {
      const chain = parseChain(json)
      expect(parseChain(JSON.parse(chainToJson(chain)))).toEqual(chain)
    })
  })

  it('gives back defaults of every kind, and a ratio of "infinity" as Infinity', () => {
    const chain = chainOf(stageKinds.map((kind) => defaultStage(kind)))
    expect(parseChain(everyKind())).toEqual(chain)
    const limiter = chainOf([stageWith('compressor', { ratio: Number.POSITIVE_INFINITY })])
    expect(chainToJson(limiter)).toContain('"ratio": "infinity"')
    expect(parseChain(JSON.parse(chainToJson(limiter)))).toEqual(limiter)
  })

  it('throws nothing but ChainError, whatever JSON it is given', () => {
    holds(fc.jsonValue(), 500, (json) => {
      expect(refusal(json)).toBeInstanceOf(ChainError)
    })
  })

  it('throws nothing but ChainError, whatever is put in place of any part of a valid chain', () => {
    const spoil = fc.tuple(
      fc.nat(),
      fc.oneof(fc.jsonValue(), fc.constantFrom(undefined, Number.NaN, Number.POSITIVE_INFINITY)),
    )
    holds(spoil, 500, ([place, value]) => {
      let at = 0
      const count = countParts(everyKind())
      const spoiled = JSON.parse(JSON.stringify(everyKind()), (_, part: unknown) =>
        at++ === place % count ? value : part,
      )
      try {
        const chain = parseChain(spoiled)
        // What still parses must be a chain in full: it survives being written and read.
        expect(parseChain(JSON.parse(chainToJson(chain)))).toEqual(chain)
      } catch (error) {
        expect(error).toBeInstanceOf(ChainError)
      }
    })
  })

  type Place = readonly (string | number)[]
  const compressor = ['stages', 1]
  const setting = (key: string) => [...compressor, 'settings', key]
  // What is wrong, where it is put, the value put there (undefined: nothing), the path named, what is expected.
  const faults: [string, Place, unknown, string, RegExp][] = [
    ['no object', [], 'chain', '', /object/],
    ['nothing', [], null, '', /object/],
    ['another format', ['format'], 'other', 'format', /evenhand-chain/],
    ['a version of the future', ['version'], 2, 'version', /1/],
    ['an entry too many', ['extra'], 1, 'extra', /no such entry/],
    ['no stages', ['stages'], undefined, 'stages', /object with format, version and stages/],
    ['stages that are no list', ['stages'], {}, 'stages', /list/],
    ['an unknown kind', [...compressor, 'kind'], 'echo', 'stages[1].kind', /"equaliser"/],
    ['an empty id', [...compressor, 'id'], '', 'stages[1].id', /name/],
    ['an endless id', [...compressor, 'id'], 'x'.repeat(1e6), 'stages[1].id', /at most 64/],
    ['an id given twice', [...compressor, 'id'], 'equaliser', 'stages[1].id', /no other stage/],
    ['a switch that is no switch', [...compressor, 'on'], 1, 'stages[1].on', /true or false/],
    ['a level out of range', setting('thresholdDb'), 1, 'stages[1].settings.thresholdDb', /-80 to 0/],
    ['a time that is text', setting('attackMs'), '5', 'stages[1].settings.attackMs', /0.02 to 200/],
    ['a mix that is no number', setting('mix'), Number.NaN, 'stages[1].settings.mix', /0 to 1/],
    ['a ratio below 1', setting('ratio'), 0.5, 'stages[1].settings.ratio', /from 1 up/],
    ['a ratio that is odd text', setting('ratio'), 'inf', 'stages[1].settings.ratio', /"infinity"/],
    ['an unknown choice', setting('detector'), 'vu', 'stages[1].settings.detector', /"peak"/],
    ['an unknown setting', setting('colour'), 1, 'stages[1].settings.colour', /no such setting/],
    ['a setting left out', setting('kneeDb'), undefined, 'stages[1].settings.kneeDb', /to be there/],
    [
      'a band out of range',
      ['stages', 0, 'settings', 'bands', 0, 'q'],
      0,
      'stages[0].settings.bands[0].q',
      /0.1 to 20/,
    ],
  ]
  it.each(faults)('refuses %s, and says where and what was expected', (_, place, value, path, expected) => {
    const error = refusal(replaced(everyKind(), place, value))
    expect(error.path).toBe(path)
    expect(error.expected).toMatch(expected)
    expect(error.message).toContain(error.expected)
  })

  it('refuses more stages or bands than there may be', () => {
    const many = (count: number) =>
      chainOf(Array.from({ length: count }, (_, i) => defaultStage('gain', `gain ${i}`)))
    expect(parseChain(many(MAX_STAGES)).stages).toHaveLength(MAX_STAGES)
    expect(refusal(many(MAX_STAGES + 1)).path).toBe('stages')
    const [band] = defaultStage('equaliser').settings.bands
    if (!band) throw new Error('an equaliser starts with a band')
    const bands = (count: number) => chainOf([equaliserWith(Array(count).fill(band))])
    expect(parseChain(bands(12))).toEqual(bands(12))
    expect(refusal(bands(13)).path).toBe('stages[0].settings.bands')
  })
})

describe('parseChain looks no further into a document than it has to', () => {
  const LONGEST_MESSAGE = 400
  const [band] = defaultStage('equaliser').settings.bands
  const chain = (stages: unknown) => ({ format: 'evenhand-chain', version: 1, stages })
  const equaliserOf = (bands: unknown) => ({
    ...defaultStage('equaliser'),
    settings: { bands, design: 'matched' },
  })
  const million = <Item>(item: Item) => unread(Array<Item>(1_000_000).fill(item))
  const nested = (depth: number) => JSON.parse('['.repeat(depth) + ']'.repeat(depth))
  const manyKeys = Object.fromEntries(Array.from({ length: 10_000 }, (_, i) => [`key${i}`, i]))
  const longKey = { ['k'.repeat(1e6)]: 1 }

  const documents: [string, unknown, string][] = [
    ['a million stages', chain(million(defaultStage('gain'))), 'stages'],
    ['a million bands', chain([equaliserOf(million(band))]), 'stages[0].settings.bands'],
    ['a million of nothing where an object should be', million(0), 'format'],
    ['a million where a number should be', chain([spoiltGain(million(0))]), 'stages[0].settings.gainDb'],
    ['nested lists as a document', nested(100_000), 'format'],
    ['nested lists as a stage', chain([nested(100_000)]), 'stages[0].kind'],
    ['nested lists as a number', chain([spoiltGain(nested(100_000))]), 'stages[0].settings.gainDb'],
    ['nested lists as an id', chain([{ ...defaultStage('gain'), id: nested(100_000) }]), 'stages[0].id'],
    ['an object of many keys as a number', chain([spoiltGain(manyKeys)]), 'stages[0].settings.gainDb'],
    ['long text as a format', { ...chain([]), format: 'f'.repeat(1e6) }, 'format'],
    ['an object that is not JSON', chain([spoiltGain(10n)]), 'stages[0].settings.gainDb'],
  ]
  it.each(documents)('refuses %s, in few words', (_, document, path) => {
    const error = refusal(document)
    expect(error.path).toBe(path)
    expect(error.message.length).toBeLessThan(LONGEST_MESSAGE)
  })

  it('refuses an entry of a name without end, naming its beginning', () => {
    for (const document of [{ ...chain([]), ...longKey }, chain([spoiltGain(0, longKey)])]) {
      const error = refusal(document)
      expect(error.path).toContain('kkk')
      expect(error.message.length).toBeLessThan(LONGEST_MESSAGE)
    }
  })

  it('reads no more entries of an object than it knows, and one', () => {
    let read = 0
    const counted = new Proxy(
      { ...chain([]), ...manyKeys },
      {
        get(object, key) {
          read += 1
          return Reflect.get(object, key)
        },
      },
    )
    expect(refusal(counted).path).toBe('key0')
    expect(read).toBeLessThan(20)
  })

  it('keeps the longest id there may be, and no longer one', () => {
    const named = (length: number) => chainOf([defaultStage('gain', 'x'.repeat(length))])
    expect(parseChain(named(64))).toEqual(named(64))
    expect(refusal(named(65)).path).toBe('stages[0].id')
  })
})

/** A gain stage with something else for its gain, and further settings. */
function spoiltGain(gainDb: unknown, more: object = {}): unknown {
  const stage = defaultStage('gain')
  return { ...stage, settings: { ...stage.settings, gainDb, ...more } }
}

/** A list none of whose items may be looked at. */
function unread<Item>(items: Item[]): Item[] {
  return new Proxy(items, {
    get(list, key) {
      if (typeof key === 'string' && /^\d+$/.test(key)) throw new Error(`item ${key} was read`)
      return Reflect.get(list, key)
    },
  })
}

function countParts(json: unknown): number {
  let count = 0
  JSON.parse(JSON.stringify(json), (_, part: unknown) => {
    count += 1
    return part
  })
  return count
}

/** `json` with `value` at a place in it; with nothing there if `value` is undefined. */
function replaced(json: unknown, [key, ...rest]: readonly (string | number)[], value: unknown): unknown {
  if (key === undefined) return value
  if (Array.isArray(json)) {
    return json.map((item: unknown, index) => (index === key ? replaced(item, rest, value) : item))
  }
  const entries = new Map<string | number, unknown>(Object.entries(json ?? {}))
  const changed = replaced(entries.get(key), rest, value)
  if (changed === undefined) entries.delete(key)
  else entries.set(key, changed)
  return Object.fromEntries(entries)
}
