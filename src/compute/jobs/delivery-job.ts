import { type ChainDoc, renderSteps, type Sound } from '../../core'
import type { Job } from './job'

export interface DeliveryInput {
  readonly chain: ChainDoc
}

/** The take through the whole chain, as long as the take and aligned with it. */
export const deliveryJob: Job<DeliveryInput, Sound> = function* ({ chain }, { take }) {
  const { sound } = yield* renderSteps(take, chain)
  return sound
}
