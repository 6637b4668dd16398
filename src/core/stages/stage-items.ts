import type { BandSettings, EqualiserDesign } from './equaliser/band'
import { type StageDoc, type StageKind, stageDefinitions } from './index'
import type { StageItem } from './stage-definition'

/** The items of a stage that can be switched and compared one by one; null where its kind has none. */
export function itemsOf<Kind extends StageKind>(stage: StageDoc<Kind>): readonly StageItem[] | null {
  return stageDefinitions[stage.kind].items?.of(stage.settings) ?? null
}

/** The most items that a stage of this kind holds. */
export function maxItemsOf({ kind }: StageDoc): number {
  return stageDefinitions[kind].items?.parameter.maxItems ?? 0
}

/** `stage` with one item switched; the same stage where its kind has no items. */
export function withItemSwitched<Kind extends StageKind>(
  stage: StageDoc<Kind>,
  index: number,
  on: boolean,
): StageDoc<Kind> {
  const { items } = stageDefinitions[stage.kind]
  return items ? { ...stage, settings: items.switched(stage.settings, index, on) } : stage
}

/** The filter bands of a stage; null where its kind has none. */
export function bandsOf<Kind extends StageKind>(stage: StageDoc<Kind>): readonly BandSettings[] | null {
  return stageDefinitions[stage.kind].bands?.of(stage.settings) ?? null
}

/** `stage` with other filter bands; the same stage where its kind has none. */
export function withBands<Kind extends StageKind>(
  stage: StageDoc<Kind>,
  replacement: readonly BandSettings[],
): StageDoc<Kind> {
  const { bands } = stageDefinitions[stage.kind]
  return bands ? { ...stage, settings: bands.replaced(stage.settings, replacement) } : stage
}

/** How the filter bands of a stage are designed; as a new stage has it where its kind has none. */
export function bandDesignOf<Kind extends StageKind>(stage: StageDoc<Kind>): EqualiserDesign {
  return stageDefinitions[stage.kind].bands?.design(stage.settings) ?? 'matched'
}
