import type { StoreApi } from 'zustand/vanilla'
import type { Compute } from '../compute/compute'
import type { Comparison, FrameRange } from '../core'
import type { EvidenceState } from './evidence-store'

/**
 * Keeps what is known over the loop up to date: it follows the evidence of the whole take, and nothing waits for it.
 * What is known of the same loop stands until newer facts are there.
 */
export class LoopFollower {
  private asked = 0

  constructor(
    private readonly evidence: StoreApi<EvidenceState>,
    private readonly compute: Pick<Compute, 'loopEvidence'>,
  ) {}

  /** What is worked out just now is not wanted any more. */
  leave(): void {
    this.asked++
  }

  /**
   * Works out what there is to know over a loop.
   * @param range null for no loop
   */
  async follow(comparison: Comparison, range: FrameRange | null): Promise<void> {
    const request = ++this.asked
    const { loop, isLoopWorking } = this.evidence.getState()
    const kept = range && sameRange(loop?.range, range) ? loop : null
    if (kept !== loop || isLoopWorking !== (range !== null))
      this.evidence.setState({ loop: kept, isLoopWorking: range !== null })
    if (!range) return
    try {
      const found = await this.compute.loopEvidence(comparison, range)
      if (request === this.asked && found) this.evidence.setState({ loop: found, isLoopWorking: false })
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error)
      if (request === this.asked)
        this.evidence.setState({
          loop: null,
          isLoopWorking: false,
          problem: `The figures of the loop could not be worked out: ${reason}`,
        })
    }
  }
}

/** Whether both are the same frames. */
export function sameRange(a: FrameRange | null | undefined, b: FrameRange | null): boolean {
  return a?.from === b?.from && a?.to === b?.to
}
