import fc from 'fast-check'
import type { SessionDoc } from '../../../src/session/document/session-doc'
import { backingLevelParameter, backingOffsetParameter } from '../../../src/session/listening/parameters'
import type { TrialRecord } from '../../../src/session/trials/trial-record'
import { chains } from '../../setup/random-chains'

const text = fc.string({ maxLength: 40 })
const hash = fc.integer({ min: 0, max: 2 ** 31 - 1 }).map((value) => value.toString(16))
const ref = fc.record({ hash: fc.option(hash), name: text })
const side = fc.constantFrom('bypassed' as const, 'processed' as const)
const id = fc.string({ minLength: 1, maxLength: 64 })

function between(min: number, max: number): fc.Arbitrary<number> {
  return fc.integer({ min: 0, max: 1000 }).map((share) => min + ((max - min) * share) / 1000)
}

function range(max: number): fc.Arbitrary<{ from: number; to: number }> {
  return fc
    .tuple(fc.nat(max), fc.integer({ min: 1, max }))
    .map(([from, length]) => ({ from, to: from + length }))
}

const trial: fc.Arbitrary<TrialRecord> = fc
  .record({ rounds: fc.integer({ min: 8, max: 20 }), finished: fc.boolean() })
  .chain(({ rounds, finished }) =>
    fc.record({
      number: fc.integer({ min: 1, max: 1e6 }),
      begunAt: fc
        .date({ noInvalidDate: true, min: new Date(0), max: new Date('2100-01-01') })
        .map((date) => date.toISOString()),
      takeName: text,
      compared: text,
      kind: fc.constantFrom('name-x' as const, 'which-of-two' as const),
      rounds: fc.constant(rounds),
      matching: fc.record({
        bypassedDb: between(-20, 0),
        processedDb: between(-20, 0),
        measuredOver: fc.constantFrom('loop' as const, 'take' as const, 'nothing' as const),
      }),
      answers: fc.array(fc.record({ hidden: side, said: side, seconds: between(0, 60) }), {
        minLength: finished ? rounds : 0,
        maxLength: rounds,
      }),
      finished: fc.constant(finished),
    }),
  )

/** Random session documents, as the app writes them. */
export const sessions: fc.Arbitrary<SessionDoc> = fc
  .record({ chain: chains(), a: fc.option(chains()), b: fc.option(chains()) })
  .chain(({ chain, a, b }) => {
    const stageId = chain.stages.length > 0 ? fc.constantFrom(...chain.stages.map((stage) => stage.id)) : null
    const scopes = [
      fc.constant({ kind: 'chain' as const }),
      fc.record({ kind: fc.constant('stage' as const), stageId: id }),
      fc.record({ kind: fc.constant('band' as const), stageId: id, bandIndex: fc.nat(20) }),
      ...(a || b ? [fc.constant({ kind: 'snapshots' as const })] : []),
    ]
    return fc.record({
      format: fc.constant('evenhand-session' as const),
      version: fc.constant(1 as const),
      take: fc.option(ref),
      backing: fc.option(
        fc.record({
          hash: fc.option(hash),
          name: text,
          on: fc.boolean(),
          levelDb: between(backingLevelParameter.min, backingLevelParameter.max),
          offsetMs: between(backingOffsetParameter.min, backingOffsetParameter.max),
        }),
      ),
      chain: fc.constant(chain),
      snapshots: fc.constant({ a, b }),
      compared: fc.record({ scope: fc.oneof(...scopes), listeningPoint: fc.option(id) }),
      listening: fc.record({
        side,
        difference: fc.boolean(),
        matched: fc.boolean(),
        monitorDb: between(-60, -18),
        loop: fc.option(range(1e6)),
        lastLoop: fc.option(range(1e6)),
      }),
      trials: fc.array(trial, { maxLength: 3 }),
      view: fc.record({
        selectedStage: stageId ?? fc.constant(null),
        spectrogram: fc.boolean(),
        seen: fc.option(range(1e6).map(({ from, to }) => ({ from: from / 3, to: to / 3 }))),
      }),
    })
  })
