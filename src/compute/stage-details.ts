import type { ChainDoc } from '../core'
import type { Compute } from './compute'
import { detailWants, selectDetail } from './select/select-detail'
import type { StageDetail } from './stage-detail'

/** What there is to know of single stages, from what is worked out off the page. */
export class StageDetails {
  private asked = 0

  constructor(private readonly compute: Pick<Compute, 'among' | 'study'>) {}

  /** What is known of one stage, whether it is on or off; undefined where some of it is not known. */
  known(chain: ChainDoc, stageId: string): StageDetail | undefined {
    return this.compute.among((facts, take) => selectDetail(facts, take, chain, stageId))
  }

  /**
   * What there is to know of one stage, after all that is more urgent; null when a newer request took its place.
   * @throws ComputeError when it could not be worked out
   */
  async find(chain: ChainDoc, stageId: string): Promise<StageDetail | null> {
    const request = ++this.asked
    const isKnown = await this.compute.study(detailWants(chain, stageId))
    return isKnown && request === this.asked ? (this.known(chain, stageId) ?? null) : null
  }
}
