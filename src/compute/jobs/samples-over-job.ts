import { type ChainDoc, samplesOverSteps } from '../../core'
import type { Job } from './job'

export interface SamplesOverInput {
  readonly take: string
  readonly chain: ChainDoc
  /** Of the integers that the samples are to fit. */
  readonly bits: number
}

/** How many samples of the take through the whole chain do not fit a fixed-point format. */
export const samplesOverJob: Job<SamplesOverInput, number> = function* ({ take, chain, bits }, tools) {
  return yield* samplesOverSteps(yield* tools.sound({ take, stages: chain.stages }), bits)
}
