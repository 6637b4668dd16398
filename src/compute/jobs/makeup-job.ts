import { type ChainDoc, makeupOf, matchingMakeupSteps } from '../../core'
import type { Job } from './job'

export interface MakeupInput {
  readonly take: string
  readonly chain: ChainDoc
  readonly stageId: string
}

/** The makeup gain with which a stage is as loud as its input; null where that cannot be measured. */
export const makeupJob: Job<MakeupInput, number | null> = function* ({ take, chain, stageId }, tools) {
  const index = chain.stages.findIndex(({ id }) => id === stageId)
  const before = chain.stages.slice(0, index)
  const stage = chain.stages[index]
  const makeup = stage && makeupOf(stage)
  if (!makeup) throw new RangeError(`no stage "${stageId}" with makeup gain in the chain`)
  tools.keep({ take, stages: before })
  return yield* matchingMakeupSteps(makeup, {
    before: () => tools.fact({ take, stages: before }, 'integratedLufs'),
    behind: (tried) => tools.fact({ take, stages: [...before, tried] }, 'integratedLufs'),
  })
}
