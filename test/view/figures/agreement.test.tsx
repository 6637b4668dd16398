import { describe, expect, it } from 'vitest'
import type { Evidence } from '../../../src/compute/evidence'
import { type ChainDoc, comparisonOf, matchingMakeupDb, type Scope, signed } from '../../../src/core'
import { startingChain } from '../../../src/demo'
import { setSetting } from '../../../src/session/chain/chain-edits'
import { printDifference } from '../../../src/view/figures/figures'
import { matchedWords } from '../../../src/view/listening/matched-words'
import { inWords } from '../../../src/view/words/in-words'
import { evidenceHere } from '../../setup/evidence-here'
import { sungDemo } from '../../setup/sung-demo'

const take = sungDemo().vocal
const chain = startingChain()
const WHOLE: Scope = { kind: 'chain' }

function evidenceOf(doc: ChainDoc, scope: Scope): Evidence {
  return evidenceHere(take, comparisonOf(doc, scope))
}

/** The change of integrated loudness as the table prints it. */
function inTable({ bypassed, processed }: Evidence): string | null {
  return printDifference(bypassed.measures.integratedLufs, processed.measures.integratedLufs, {
    key: 'integratedLufs',
  })
}

/** A printed figure as a number. */
function read(text: string | null): number {
  return Number(text?.replace('−', '-') ?? Number.NaN)
}

/** The gain that matching gives, as the bar and the caption print it; the quieter side's is 0. */
function inBar({ matching }: Evidence): string {
  return matchedWords(true, matching).sentence
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
  ])('agree to a tenth in the table, in the bar and on the cards, %s', (_, doc) => {
    for (const scope of [WHOLE, ...doc.stages.map(({ id }): Scope => ({ kind: 'stage', stageId: id }))]) {
      const evidence = evidenceOf(doc, scope)
      const { bypassedDb, processedDb } = evidence.matching
      const change = inTable(evidence)
      // The table prints the difference of its own figures, at most a tenth from a difference that is rounded once.
      expect(Math.abs(read(change) - (bypassedDb - processedDb))).toBeLessThanOrEqual(0.1 + 1e-9)
      const amount = Math.max(-bypassedDb, -processedDb)
      expect(inBar(evidence)).toContain(amount < 0.05 ? 'equally loud' : `plays ${inWords(amount)} dB lower`)
      // Behind the last stage is the end of the chain.
      const last = doc.stages.at(-1)?.id ?? ''
      if (scope.kind === 'stage' && scope.stageId === last)
        expect(Math.abs(read(onCard(evidence, last)) - read(change))).toBeLessThanOrEqual(0.1 + 1e-9)
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
