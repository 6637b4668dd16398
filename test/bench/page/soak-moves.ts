import {
  type BandSettings,
  bandParameters,
  type ChoiceParameter,
  frameCount,
  type NumberParameter,
  type Parameter,
  type Scope,
  type StageDoc,
  stageDefinitions,
  stageKinds,
} from '../../../src/core'
import type { App } from '../../../src/session/app'
import {
  addBand,
  addStage,
  type ChainEdit,
  duplicateStage,
  moveStage,
  removeBand,
  removeStage,
  resetStage,
  setBand,
  setSetting,
  switchStage,
} from '../../../src/session/chain/chain-edits'
import { restoreSnapshot, storeSnapshot } from '../../../src/session/chain/snapshots'
import { valueAt } from '../../../src/view/controls/positions'

/** A chain grows no longer than this by chance. */
const MOST_STAGES = 8

/** Everything that can be done on a app while it plays, each by chance. */
export function soakMoves(app: App, random: () => number): readonly (() => void)[] {
  const { chain, listening, listen, comparing } = app
  const below = (count: number) => Math.floor(random() * count)
  const oneOf = <Item>(items: readonly Item[]): Item | undefined => items[below(items.length)]
  const frames = () => frameCount(app.take.getState().take?.sound ?? { sampleRate: 1, channels: [] })
  const edit = (change: ChainEdit) => {
    chain.getState().edit(change)
    chain.getState().endGesture()
  }
  const onStage = (change: (stage: StageDoc) => void) => {
    const stage = oneOf(chain.getState().chain.stages)
    if (stage) change(stage)
  }
  const anyName = () => (random() < 0.5 ? 'a' : 'b')
  const mayGrow = () => chain.getState().chain.stages.length < MOST_STAGES
  const anyValue = (parameter: Parameter): unknown => {
    if (parameter.type === 'number') return valueAt(parameter, random())
    return parameter.type === 'choice' ? oneOf(parameter.options)?.value : random() < 0.5
  }
  const setAny = (stage: StageDoc) => {
    const row = oneOf(Object.entries<Parameter>(stageDefinitions[stage.kind].parameters))
    if (!row) return
    const [key, parameter] = row
    if (parameter.type !== 'list') edit(setSetting(stage.id, key, anyValue(parameter)))
    else edit(setBand(stage.id, below(4), anyBand()))
  }
  const anyNumber = (parameter: NumberParameter | ChoiceParameter<number>): number =>
    parameter.type === 'number' ? valueAt(parameter, random()) : parameter.default
  const anyFrequency = () => anyNumber(bandParameters.frequencyHz)
  const anyBand = (): Partial<BandSettings> => ({
    frequencyHz: anyFrequency(),
    gainDb: anyNumber(bandParameters.gainDb),
    q: anyNumber(bandParameters.q),
  })
  const anyScope = (): Scope => {
    const stageId = oneOf(chain.getState().chain.stages)?.id ?? ''
    return (
      oneOf<Scope>([
        { kind: 'chain' },
        { kind: 'stage', stageId },
        { kind: 'band', stageId, bandIndex: below(3) },
      ]) ?? {
        kind: 'chain',
      }
    )
  }
  return [
    () => void listening.togglePlay(),
    () => listening.seek(below(frames())),
    () => {
      const from = below(frames() * 0.8)
      listening.setLoop(random() < 0.3 ? null : { from, to: from + 4800 + below(frames() * 0.2) })
    },
    () => listening.switchSide(),
    () => listening.switchSide(),
    () => listening.setDifference(random() < 0.5),
    () => listening.setMatched(random() < 0.7),
    () => listening.setMonitorDb(-30 + 30 * random()),
    () => listening.setScope(anyScope()),
    () =>
      listening.setListeningPoint(random() < 0.5 ? null : (oneOf(chain.getState().chain.stages)?.id ?? null)),
    () =>
      listening.setBacking({
        backingOn: random() < 0.7,
        backingLevelDb: -12 + 18 * random(),
        backingOffsetMs: -50 + 100 * random(),
      }),
    () => onStage(setAny),
    () => onStage(setAny),
    () => onStage(setAny),
    () => onStage(({ id, on }) => edit(switchStage(id, !on))),
    () => onStage(({ id }) => edit(moveStage(id, below(MOST_STAGES)))),
    () => onStage(({ id }) => edit(resetStage(id))),
    () => onStage(({ id }) => edit(random() < 0.5 ? addBand(id) : removeBand(id, below(6)))),
    () => onStage(({ id }) => edit(removeStage(id))),
    () => mayGrow() && edit(addStage(oneOf(stageKinds) ?? 'gain')),
    () => mayGrow() && onStage(({ id }) => edit(duplicateStage(id))),
    () => chain.getState().undo(),
    () => chain.getState().redo(),
    () => chain.getState().editVersions(storeSnapshot(anyName())),
    () => comparing.compare('snapshots'),
    () => chain.getState().editVersions(restoreSnapshot(anyName())),
    () => {
      if (listen.getState().sweep) listening.setSweep(null)
      else
        onStage(({ id: stageId }) =>
          listening.setSweep({ stageId, bandIndex: below(3), frequencyHz: anyFrequency() }),
        )
    },
  ]
}
