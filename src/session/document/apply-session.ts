import { snapshotScope } from '../comparison/scope-after'
import { FIRST_LISTENING, type ListenContent } from '../listening/listen-store'
import type { Backing, Take } from '../take/take-store'
import type { SessionDoc } from './session-doc'
import type { SessionParts } from './session-parts'

/** The sounds that a session refers to, as far as they were found. */
export interface SessionSounds {
  readonly take: Take | null
  readonly backing: Backing | null
}

const NO_SOUNDS: SessionSounds = { take: null, backing: null }

/**
 * Puts the app into the state that a session document describes. Changes made before can no longer be undone.
 * @param sounds those it refers to. One that is not given stays if it is loaded already; otherwise it is awaited, and
 * the document of the app goes on referring to it.
 */
export function applySession(
  app: Pick<SessionParts, 'chain' | 'listening' | 'takes' | 'trial' | 'view'>,
  session: SessionDoc,
  sounds: SessionSounds = NO_SOUNDS,
): void {
  const { chain, snapshots, view } = session
  app.takes.restore(session, sounds)
  // Another chain ends a trial under way, before its history is replaced.
  app.chain.getState().open({ chain, snapshots, selectedId: view.selectedStage })
  app.listening.restore(listeningOf(session))
  app.trial.setState({ history: session.trials, shown: null })
  app.view.setState({ seen: view.seen, spectrogram: view.spectrogram })
}

function listeningOf({ compared, listening, backing, snapshots }: SessionDoc): ListenContent {
  const { difference, side, ...others } = listening
  const { scope, listeningPoint } = compared
  return {
    ...others,
    side,
    heard: difference ? 'difference' : side,
    scope: scope.kind === 'snapshots' ? snapshotScope(snapshots) : scope,
    listeningPoint,
    backingOn: backing?.on ?? FIRST_LISTENING.backingOn,
    backingLevelDb: backing?.levelDb ?? FIRST_LISTENING.backingLevelDb,
    backingOffsetMs: backing?.offsetMs ?? FIRST_LISTENING.backingOffsetMs,
  }
}
