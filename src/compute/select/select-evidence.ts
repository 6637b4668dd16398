import { type ChainDoc, type Comparison, type FrameRange, sameStage } from '../../core'
import type { HashedTake, SoundAddress } from '../address'
import type { Evidence, SideEvidence, StageEvidence } from '../evidence'
import type { FactStore } from '../facts/fact-store'
import { addressOf, type FactName, type Want } from '../facts/fact-values'
import { matchingGains } from './matching'

/** What is shown of a side. */
const SIDE: readonly FactName[] = ['energies', 'integratedLufs', 'measures', 'loudness', 'peaks', 'spectrum']
/** What is shown of each stage on the way. */
const STAGE: readonly FactName[] = ['integratedLufs', 'trace', 'reduction']

/** Facts that evidence is put together from, from fewer stages to more: of a side, and of its stages where asked. */
export function wantsOf({ stages }: ChainDoc, withStages: boolean): readonly Want[] {
  if (!withStages) return [{ stages, names: SIDE }]
  const last = stages.findLastIndex(({ on }) => on)
  const behind = stages.flatMap((stage, k): Want[] =>
    stage.on
      ? [{ stages: stages.slice(0, k + 1), names: k === last ? [...SIDE, 'trace', 'reduction'] : STAGE }]
      : [],
  )
  const take: Want = { stages: [], names: last < 0 ? SIDE : ['integratedLufs'] }
  return [take, ...behind]
}

/** Puts evidence together from facts, and gives the very same parts again where they are of the same sounds. */
export class EvidenceSelector {
  private readonly sides = new WeakMap<SideEvidence['measures'], SideEvidence>()

  constructor(private readonly facts: FactStore) {}

  /** Null where some of the facts are not known. */
  select(take: HashedTake, comparison: Comparison, loop: FrameRange | null): Evidence | null {
    const ofBypassed = { take: take.hash, stages: comparison.bypassed.stages }
    const ofProcessed = { take: take.hash, stages: comparison.processed.stages }
    const bypassed = this.side(ofBypassed)
    const processed = this.side(ofProcessed)
    const stages = this.stages(ofProcessed)
    const a = this.loudness(ofBypassed)
    const b = this.loudness(ofProcessed)
    if (!bypassed || !processed || !stages || !a || !b) return null
    const matching = matchingGains(a, b, loop, take.sound.sampleRate)
    return { bypassed, processed, stages, matching, chains: comparison }
  }

  private side(address: SoundAddress): SideEvidence | null {
    const { facts } = this
    const measures = facts.get(address, 'measures')
    const loudness = facts.get(address, 'loudness')
    const peaks = facts.get(address, 'peaks')
    const spectrum = facts.get(address, 'spectrum')
    if (!measures || !loudness || !peaks || !spectrum) return null
    const known = this.sides.get(measures)
    if (known) return known
    const side = { measures, loudness, peaks, spectrum }
    this.sides.set(measures, side)
    return side
  }

  private loudness(address: SoundAddress) {
    const energies = this.facts.get(address, 'energies')
    const integratedLufs = this.facts.get(address, 'integratedLufs')
    return energies && integratedLufs !== undefined ? { energies, integratedLufs } : null
  }

  private stages({ take, stages }: SoundAddress): ReadonlyMap<string, StageEvidence> | null {
    const found = new Map<string, StageEvidence>()
    let before = this.facts.get({ take, stages: [] }, 'integratedLufs')
    for (const [k, stage] of stages.entries()) {
      const address = { take, stages: stages.slice(0, k + 1) }
      const behind: number | null | undefined = stage.on ? this.facts.get(address, 'integratedLufs') : before
      const trace = stage.on ? this.facts.get(address, 'trace') : null
      const reduction = stage.on ? this.facts.get(address, 'reduction') : null
      if (before === undefined || behind === undefined || trace === undefined || reduction === undefined)
        return null
      const loudnessChangeLu = behind === null || before === null ? null : behind - before
      found.set(stage.id, { integratedLufs: behind, loudnessChangeLu, reduction, trace })
      before = behind
    }
    return found
  }
}

/** About half of the work on the end of a chain: facts that are worked out from each other. */
const MEASURED: ReadonlySet<FactName> = new Set(['energies', 'integratedLufs', 'measures', 'loudness'])

/**
 * What is missing of the sides of a comparison, as it is given to workers: each side by itself, or, where all of the
 * others is known and the take may be worked on by several, one side in two halves.
 */
export function lotsOf(
  sides: readonly (readonly Want[])[],
  sharesOut: boolean,
): readonly (readonly Want[])[] {
  const missing = sides.filter(({ length }) => length > 0)
  const [side] = missing
  return side && missing.length === 1 && sharesOut ? halvesOf(side) : missing
}

/**
 * Wants in two lots that take about as long, for two workers: both run the stages, and each works out half of what is
 * wanted of the end. In one lot where there is not enough to share.
 */
function halvesOf(wants: readonly Want[]): readonly (readonly Want[])[] {
  const end = wants.at(-1)
  if (!end) return [wants]
  const { stages } = end
  const measured = end.names.filter((name) => MEASURED.has(name))
  const others = end.names.filter((name) => !MEASURED.has(name))
  if (measured.length === 0 || others.length === 0) return [wants]
  return [[...wants.slice(0, -1), { stages, names: others }], [{ stages, names: measured }]]
}

/** The facts that are wanted and not known. */
export function missingFrom(facts: FactStore, take: string, wants: readonly Want[]): readonly Want[] {
  return wants.flatMap((want) => {
    const address = addressOf(take, want)
    const missing = want.names.filter((name) => !facts.has(address, name))
    return missing.length > 0 ? [{ ...want, names: missing }] : []
  })
}

/** The stages that two chains begin with alike. */
export function alikePrefix(a: ChainDoc, b: ChainDoc | null): Want['stages'] {
  if (!b) return []
  const changed = a.stages.findIndex((stage, k) => !sameStage(stage, b.stages[k]))
  return changed < 0 ? a.stages : a.stages.slice(0, changed)
}
