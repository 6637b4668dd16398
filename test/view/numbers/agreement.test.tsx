import { describe, expect, it } from 'vitest'
import type { Evidence } from '../../../src/compute/evidence'
import { workOutEvidence } from '../../../src/compute/evidence/work-out'
import { type ChainDoc, comparisonOf, matchingMakeupDb, plain, type Scope, signed } from '../../../src/core'
import { startingChain } from '../../../src/demo'
import { setSetting } from '../../../src/session/chain/chain-edits'
import { matchedWords } from '../../../src/view/listening/matched-words'
import { printDifference } from '../../../src/view/numbers/figures'
import { sungDemo } from '../../setup/sung-demo'

const take = sungDemo().vocal
const chain = startingChain()
const WHOLE: Scope = { kind: 'chain' }

function evidenceOf(doc: ChainDoc, scope: Scope): Evidence {
  const steps = workOutEvidence(take, comparisonOf(doc, scope), null, null)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value.evidence
  }
}

/** The change of integrated loudness as the table prints it. */
function inTable({ bypassed, processed }: Evidence): string | null {
  return printDifference(bypassed.measures.integratedLufs, processed.measures.integratedLufs)
}

/** The gain that matching gives, as the bar and the caption print it; the quieter side's is 0. */
function inBar({ matching }: Evidence): string {
  return matchedWords(true, matching).gain
}

function onCard({ stages }: Evidence, stageId: string): string {
  return signed(stages.get(stageId)?.loudnessChangeLu ?? Number.NaN, 1)
}

describe('figures of the demo', () => {
  it.each([
    ['as it comes', chain],
    [
      'with the de-esser first',
      { ...chain, stages: [...chain.stages.slice(3), ...chain.stages.slice(0, 3)] },
    ],
  ])('are the same in the table, in the bar and on the cards, %s', (_, doc) => {
    for (const scope of [WHOLE, ...doc.stages.map(({ id }): Scope => ({ kind: 'stage', stageId: id }))]) {
      const evidence = evidenceOf(doc, scope)
      const { bypassedDb, processedDb } = evidence.matching
      const change = inTable(evidence)
      expect(change).toBe(signed(bypassedDb - processedDb, 1))
      const amount = plain(Math.max(-bypassedDb, -processedDb), 1)
      expect(inBar(evidence)).toContain(change === '0.0' ? 'equally loud' : amount)
      // Behind the last stage is the end of the chain.
      const last = doc.stages.at(-1)?.id ?? ''
      if (scope.kind === 'stage' && scope.stageId === last) expect(onCard(evidence, last)).toBe(change)
    }
    const { stages, bypassed, processed } = evidenceOf(doc, WHOLE)
    const sum = [...stages.values()].reduce(
      (total, { loudnessChangeLu }) => total + (loudnessChangeLu ?? 0),
      0,
    )
    const change = (processed.measures.integratedLufs ?? 0) - (bypassed.measures.integratedLufs ?? 0)
    expect(sum).toBeCloseTo(change, 9)
  })

  it('show nothing left on the card of a compressor whose makeup was matched', () => {
    const sensitive = setSetting('sibilance', 'thresholdDb', -40)(chain)?.chain ?? chain
    const makeupDb = matchingMakeupDb(take, sensitive, 'level')
    const doc = setSetting('level', 'makeupDb', makeupDb ?? Number.NaN)(sensitive)?.chain ?? sensitive
    const evidence = evidenceOf(doc, { kind: 'stage', stageId: 'level' })
    expect(onCard(evidence, 'level')).toBe('0.0')
    // The de-esser behind it finds less to take away where loud notes were turned down: the table says that of the end
    // of the chain.
    expect(Number(inTable(evidence))).toBeGreaterThan(0.2)
  })
})
