import { numberedStage, type StageDoc, stageDefinitions } from '../../core'
import type { App } from '../../session/app'
import { moveStage, switchStage } from '../../session/chain/chain-edits'
import { snapshotKeys, snapshotLetters, storeSnapshot } from '../../session/chain/snapshots'

/** The selected stage with its position in the chain, from 0; null while there is none. */
function selectedOf({ chain }: Pick<App, 'chain'>): { stage: StageDoc; index: number; count: number } | null {
  const {
    chain: { stages },
    selectedId,
  } = chain.getState()
  const index = stages.findIndex(({ id }) => id === selectedId)
  const stage = stages[index]
  return stage ? { stage, index, count: stages.length } : null
}

/** Selects the stage so many positions after the selected one. */
export function selectNeighbour(app: Pick<App, 'chain'>, by: number): void {
  const { chain, select } = app.chain.getState()
  const next = chain.stages[(selectedOf(app)?.index ?? -1) + by]
  if (next) select(next.id)
}

/** Switches the selected stage. Returns a status message, or null if nothing changed (so do the functions below). */
export function switchSelected(app: Pick<App, 'chain'>): string | null {
  const selected = selectedOf(app)
  if (!selected) return null
  const { stage, index } = selected
  app.chain.getState().edit(switchStage(stage.id, !stage.on))
  return `${numberedStage(index, stage.kind)} ${stage.on ? 'off' : 'on'}`
}

/** Moves the selected stage by so many positions. */
export function moveSelected(app: Pick<App, 'chain'>, by: number): string | null {
  const selected = selectedOf(app)
  if (!selected) return null
  const { stage, index, count } = selected
  const to = index + by
  if (to < 0 || to >= count) return null
  app.chain.getState().edit(moveStage(stage.id, to))
  return `${stageDefinitions[stage.kind].label}, position ${to + 1} of ${count}`
}

/** Stores the chain in the first place that is free; a key never replaces a stored version. */
export function storeVersion({ chain }: Pick<App, 'chain'>): string {
  const { snapshots, editVersions } = chain.getState()
  const key = snapshotKeys.find((each) => snapshots[each] === null)
  if (!key) return 'A and B are both stored: replace one in its menu'
  editVersions(storeSnapshot(key))
  return `Stored as ${snapshotLetters[key]}`
}
