import { type ChainDoc, detectorOf, pictureOf, type StageDoc } from '../../core'
import type { FactStore } from '../facts/fact-store'
import type { FactName, FactValues, Want } from '../facts/fact-values'
import type { StageDetail } from '../stage-detail'
import type { Study } from '../want-options'

/** A stage as it is looked at: on, behind those in front of it. */
interface InPlace {
  readonly stage: StageDoc
  readonly front: readonly StageDoc[]
  readonly upTo: readonly StageDoc[]
}

/** Facts that the detail of a stage is put together from, and those that they are worked out from. */
export function detailWants(chain: ChainDoc, stageId: string): Study {
  const place = placeOf(chain, stageId)
  if (!place) return { wants: [], helps: [] }
  const { front, upTo } = place
  const names = namesOf(place.stage)
  const wants: Want[] = names.includes('measures') ? [{ stages: front, names: ['measures'] }] : []
  if (names.length > 0) wants.push({ stages: upTo, names })
  const helps: Want[] = [{ stages: front, names: ['integratedLufs'] }]
  return { wants, helps }
}

/** The detail of a stage; undefined where some of it is not known. */
export function selectDetail(
  facts: FactStore,
  take: string,
  chain: ChainDoc,
  stageId: string,
): StageDetail | undefined {
  const place = placeOf(chain, stageId)
  if (!place) return undefined
  const names = namesOf(place.stage)
  const find = <Name extends FactName>(name: Name): FactValues[Name] | null | undefined =>
    names.includes(name) ? facts.get({ take, stages: place.upTo }, name) : null
  const level = find('detectorLevel')
  const sibilants = find('sibilantLevels')
  const harmonics = find('addedHarmonics')
  const after = find('measures')
  const before = after && facts.get({ take, stages: place.front }, 'measures')
  if (level === undefined || sibilants === undefined || harmonics === undefined) return undefined
  if (after === undefined || before === undefined) return undefined
  return { level, sibilants, harmonics, levels: before && after && { before, after } }
}

function placeOf({ stages }: ChainDoc, stageId: string): InPlace | null {
  const index = stages.findIndex(({ id }) => id === stageId)
  const stage = stages[index]
  if (!stage) return null
  const front = stages.slice(0, index)
  return { stage, front, upTo: [...front, { ...stage, on: true }] }
}

/** What a stage is looked at for: by what it detects and what its picture shows. */
function namesOf(stage: StageDoc): readonly FactName[] {
  const names: FactName[] = detectorOf(stage) ? ['detectorLevel'] : []
  switch (pictureOf(stage)?.kind) {
    case 'sibilance':
      return [...names, 'sibilantLevels']
    case 'transfer-curve':
      return [...names, 'addedHarmonics']
    case 'level-change':
      return [...names, 'measures']
    default:
      return names
  }
}
