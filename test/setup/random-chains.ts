import fc from 'fast-check'
import {
  type ChainDoc,
  parseChain,
  type Sound,
  type StageDoc,
  type StageKind,
  stageDefinitions,
  stageKinds,
} from '../../src/core'
import type { NumberParameter, Parameter } from '../../src/core/stages/parameter'
import { noise } from './signals'

/** Seed of every property test, so that a failure comes back; another one through the environment: SEED=7. */
export const SEED = Number(process.env.SEED ?? 1)

/** Checks a property on `runs` random values; a failure prints the seed, the path and the smallest counterexample. */
export function holds<Value>(
  arbitrary: fc.Arbitrary<Value>,
  runs: number,
  check: (value: Value) => void,
): void {
  fc.assert(fc.property(arbitrary, check), { seed: SEED, numRuns: runs })
}

/** Even over 0 to 1: random doubles would nearly all lie within 1e-9 of an end. */
const unit = fc.integer({ min: 0, max: 1e6 }).map((millionths) => millionths / 1e6)

/** A number over the whole range of its parameter, ends included, spread as its control moves. */
function numberOf({ min, max, scale, default: usual }: NumberParameter): fc.Arbitrary<number | string> {
  const top = max === Number.POSITIVE_INFINITY ? 'infinity' : max
  const between = unit.map((share) => {
    if (scale === 'reciprocal') return share === 1 ? top : min / (1 - share)
    const value = scale === 'logarithmic' ? min * (max / min) ** share : min + (max - min) * share
    return Math.min(max, Math.max(min, value))
  })
  return fc.oneof(
    { weight: 6, arbitrary: between },
    { weight: 2, arbitrary: fc.constantFrom<(number | string)[]>(min, top, usual) },
  )
}

function anyValueOf(parameter: Parameter): fc.Arbitrary<unknown> {
  switch (parameter.type) {
    case 'number':
      return numberOf(parameter)
    case 'choice':
      return fc.constantFrom(...parameter.options.map(({ value }) => value))
    case 'switch':
      return fc.oneof(
        { weight: 3, arbitrary: fc.constant(true) },
        { weight: 1, arbitrary: fc.constant(false) },
      )
    case 'list':
      return fc.array(settingsOf(parameter.item), { maxLength: parameter.maxItems })
  }
}

function settingsOf(parameters: object): fc.Arbitrary<Record<string, unknown>> {
  const rows: [string, Parameter][] = Object.entries(parameters)
  return fc.record(Object.fromEntries(rows.map(([key, parameter]) => [key, anyValueOf(parameter)])))
}

/** Random chains as JSON values: any kinds in any order, every setting over its whole range. */
export function chainJson(
  kinds: readonly StageKind[] = stageKinds,
  lengths: { minLength?: number; maxLength?: number } = { maxLength: 4 },
): fc.Arbitrary<object> {
  const stage = fc.constantFrom(...kinds).chain((kind) =>
    fc.record({
      kind: fc.constant(kind),
      on: anyValueOf({ type: 'switch', label: '', default: true, help: '' }),
      settings: settingsOf(stageDefinitions[kind].parameters),
    }),
  )
  return fc.array(stage, lengths).map((stages) => ({
    format: 'evenhand-chain',
    version: 1,
    stages: stages.map((settings, index) => ({ id: `stage ${index}`, ...settings })),
  }))
}

/** Random chains. */
export function chains(...args: Parameters<typeof chainJson>): fc.Arbitrary<ChainDoc> {
  return chainJson(...args).map(parseChain)
}

/** One random stage of any of the given kinds, switched on. */
export function stages(kinds: readonly StageKind[] = stageKinds) {
  return chains(kinds, { minLength: 1, maxLength: 1 }).map(({ stages: [stage] }) => {
    if (!stage) throw new Error('a chain of one stage has a first one')
    return { ...stage, on: true }
  })
}

/** A random stage that is on, and the same with one setting moved by a hand. */
export function movedSettings(kind: StageKind): fc.Arbitrary<{ before: StageDoc; after: StageDoc }> {
  const settings = settingsOf(stageDefinitions[kind].parameters)
  const key = fc.constantFrom(...Object.keys(stageDefinitions[kind].parameters))
  return fc.tuple(settings, settings, key).map(([from, to, moved]) => {
    const [before, after] = [from, { ...from, [moved]: to[moved] }].map((values) => {
      const stages = [{ id: kind, kind, on: true, settings: values }]
      return parseChain({ format: 'evenhand-chain', version: 1, stages }).stages[0]
    })
    if (!before || !after) throw new Error('a chain of one stage has a first one')
    return { before, after }
  })
}

/** Sample rates from 8 to 192 kHz: the usual ones, and any between. */
export const sampleRates = fc.oneof(
  fc.constantFrom(8000, 44_100, 48_000, 96_000, 192_000),
  fc.integer({ min: 8000, max: 192_000 }),
)

/** Noise in bursts, with silence between and at levels from -80 to +12 dBFS, in one or two channels. */
export function sounds(frames: { min: number; max: number }): fc.Arbitrary<Sound> {
  return fc
    .record({
      sampleRate: sampleRates,
      count: fc.integer(frames),
      channelCount: fc.integer({ min: 1, max: 2 }),
      seed: fc.integer({ min: 0, max: 1e6 }),
      levelsDb: fc.array(fc.oneof(fc.integer({ min: -80, max: 12 }), fc.constant(null)), {
        minLength: 1,
        maxLength: 6,
      }),
    })
    .map(({ sampleRate, count, channelCount, seed, levelsDb }) => {
      const seconds = count / sampleRate
      return noise(sampleRate, seconds, channelCount, seed, (at) => {
        const levelDb = levelsDb[Math.min(levelsDb.length - 1, Math.floor((at / seconds) * levelsDb.length))]
        return levelDb === null || levelDb === undefined ? 0 : 10 ** (levelDb / 20)
      })
    })
}
