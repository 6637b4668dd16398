import { numberedStage, type StageDoc, stageDefinitions } from '../../core'
import type { App } from '../../session/app'
import { moveStage, switchStage } from '../../session/chain/chain-edits'
import { snapshotNames, snapshotWords, storeSnapshot } from '../../session/chain/snapshots'

/** The stage at hand with its place on the path, from 0; null while there is none. */
function atHand({ chain }: Pick<App, 'chain'>): { stage: StageDoc; index: number; count: number } | null {
  const {
    chain: { stages },
    selectedId,
  } = chain.getState()
  const index = stages.findIndex(({ id }) => id === selectedId)
  const stage = stages[index]
  return stage ? { stage, index, count: stages.length } : null
}

/** Puts the stage before or after the one at hand at hand. */
export function stepStage(app: Pick<App, 'chain'>, by: number): void {
  const { chain, select } = app.chain.getState()
  const next = chain.stages[(atHand(app)?.index ?? -1) + by]
  if (next) select(next.id)
}

/** Switches the stage at hand. What it did in words; null where it did nothing, as of all that follow. */
export function switchAtHand(app: Pick<App, 'chain'>): string | null {
  const hand = atHand(app)
  if (!hand) return null
  const { stage, index } = hand
  app.chain.getState().edit(switchStage(stage.id, !stage.on))
  return `${numberedStage(index, stage.kind)} ${stage.on ? 'off' : 'on'}`
}

/** Moves the stage at hand along the path by so many places. */
export function moveAtHand(app: Pick<App, 'chain'>, by: number): string | null {
  const hand = atHand(app)
  if (!hand) return null
  const to = hand.index + by
  if (to < 0 || to >= hand.count) return null
  app.chain.getState().edit(moveStage(hand.stage.id, to))
  return `${stageDefinitions[hand.stage.kind].label}, position ${to + 1} of ${hand.count}`
}

/** Stores the chain under the first name that is free; a key never replaces a stored version. */
export function storeVersion({ chain }: Pick<App, 'chain'>): string {
  const { snapshots, editVersions } = chain.getState()
  const name = snapshotNames.find((each) => snapshots[each] === null)
  if (!name) return 'A and B are both taken: choose in “Store version” which one to replace'
  editVersions(storeSnapshot(name))
  return `Stored as ${snapshotWords[name]}`
}
