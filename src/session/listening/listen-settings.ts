import type { ListenSettings, SideName } from '../../audio/engine/messages'
import type { MatchingGains } from '../../compute/evidence'
import { type ChainDoc, comparisonOf, idleChain, sweptChain } from '../../core'
import type { ListenState } from './listen-store'
import type { SweepLevel } from './sweep-level'

/** What a blind trial has the player play. It goes past the stores, so that nothing on the screen can show it. */
export interface HiddenHearing {
  readonly side: SideName
  readonly matching: MatchingGains
  /** Silent for a moment, while one side becomes the other. */
  readonly muted: boolean
}

/** "Difference only" starts this much lower: it is often a surprise, and it is all S. */
const DIFFERENCE_DB = -6

/** Everything that decides what is heard. */
interface Hearing {
  readonly chain: ChainDoc
  readonly listen: ListenState
  /** Null before it was worked out. */
  readonly matching: MatchingGains | null
  readonly sampleRate: number
  readonly hidden: HiddenHearing | null
  readonly sweepLevel: Pick<SweepLevel, 'lifted' | 'levelDb'>
}

/** What the player is told to play. */
export function listenSettings({
  chain,
  listen,
  matching: found,
  sampleRate,
  hidden,
  sweepLevel,
}: Hearing): ListenSettings {
  const matching = hidden?.matching ?? (listen.matched ? found : null)
  const heard = hidden?.side ?? listen.heard
  const sweep = sweepLevel.lifted ? listen.sweep : null
  const monitorDb = listen.monitorDb + sweepLevel.levelDb + (heard === 'difference' ? DIFFERENCE_DB : 0)
  // A sweep is heard wherever the listening point is and whatever is compared.
  const compared = sweep
    ? comparisonOf(sweptChain(chain, sweep), { kind: 'chain' })
    : comparisonOf(chain, listen.scope, listen.listeningPoint)
  const ofWholeChain = heard === 'difference' && listen.scope.kind === 'chain'
  return {
    bypassed: ofWholeChain ? idleChain(compared.processed) : compared.bypassed,
    processed: compared.processed,
    bypassedGainDb: matching?.bypassedDb ?? 0,
    processedGainDb: matching?.processedDb ?? 0,
    heard: sweep ? 'processed' : heard,
    differenceStageId: listen.scope.kind === 'stage' ? listen.scope.stageId : null,
    monitorDb: hidden?.muted ? Number.NEGATIVE_INFINITY : monitorDb,
    backing: {
      on: listen.backingOn,
      levelDb: listen.backingLevelDb,
      offsetFrames: Math.round((listen.backingOffsetMs * sampleRate) / 1000),
    },
  }
}

/** Whether nothing of what is heard differs, apart from where in the take. */
export function sameListening(a: ListenState, b: ListenState): boolean {
  return (
    a.heard === b.heard &&
    a.scope === b.scope &&
    a.listeningPoint === b.listeningPoint &&
    a.matched === b.matched &&
    a.sweep === b.sweep &&
    a.monitorDb === b.monitorDb &&
    a.backingOn === b.backingOn &&
    a.backingLevelDb === b.backingLevelDb &&
    a.backingOffsetMs === b.backingOffsetMs
  )
}
