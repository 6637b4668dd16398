import type { FrameRange, Sound, StageDoc } from '../core'

/** A take with its hash. */
export interface HashedTake {
  readonly hash: string
  readonly sound: Sound
}

/** A sound: a take, by the hash of its samples, behind stages. Those that are off have no part in it. */
export interface SoundAddress {
  readonly take: string
  readonly stages: readonly StageDoc[]
  /** Cut out of that sound, in whole frames; all of it where it is missing. */
  readonly range?: FrameRange
}

const keys = new WeakMap<StageDoc, string>()

/** The same for two stages that do the same to any sound, whatever they are called. */
function stageKey(stage: StageDoc): string {
  const known = keys.get(stage)
  if (known !== undefined) return known
  const { kind, settings } = stage
  const key = JSON.stringify([kind, settings], (_, value: unknown) =>
    value === Number.POSITIVE_INFINITY ? 'infinity' : value,
  )
  keys.set(stage, key)
  return key
}

/** The stages that have a part in a sound, in their order. */
export function stagesOn(stages: readonly StageDoc[]): readonly StageDoc[] {
  return stages.filter(({ on }) => on)
}

/** The sound that one is cut out of; itself where it is whole. */
export function wholeOf({ take, stages }: SoundAddress): SoundAddress {
  return { take, stages }
}

/** One text for each sound, whoever asks for it. */
export function soundKey({ take, stages, range }: SoundAddress): string {
  const cut = range ? [`${range.from} ${range.to}`] : []
  return [take, ...stagesOn(stages).map(stageKey), ...cut].join('\n')
}
