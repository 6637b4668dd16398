import { FIRST_MONITOR_DB, type ListenState } from '../listening/listen-store'
import { soundRef } from '../take/sound-ref'
import { type BackingDoc, MAX_TRIALS, type ScopeDoc, SESSION_VERSION, type SessionDoc } from './session-doc'
import type { SessionParts } from './session-parts'

/** The app as a session document. */
export function sessionOf(
  app: Pick<SessionParts, 'chain' | 'take' | 'listen' | 'trial' | 'view'>,
): SessionDoc {
  const { chain, snapshots, selectedId } = app.chain.getState()
  const { take, backing, awaited } = app.take.getState()
  const listen = app.listen.getState()
  const { heard, side, matched, monitorDb, loop, lastLoop, listeningPoint } = listen
  const { seen, spectrogram } = app.view.getState()
  const backingRef = backing ? soundRef(backing) : awaited.backing
  return {
    format: 'evenhand-session',
    version: SESSION_VERSION,
    take: take ? soundRef(take) : awaited.take,
    backing: backingRef && backingOf(backingRef, listen),
    chain,
    snapshots,
    compared: { scope: scopeOf(listen), listeningPoint },
    listening: {
      side,
      difference: heard === 'difference',
      matched,
      monitorDb: Math.min(monitorDb, FIRST_MONITOR_DB),
      loop,
      lastLoop,
    },
    trials: app.trial.getState().history.slice(-MAX_TRIALS),
    view: { selectedStage: selectedId, seen, spectrogram },
  }
}

function backingOf(
  ref: Pick<BackingDoc, 'hash' | 'name'>,
  { backingOn, backingLevelDb, backingOffsetMs }: ListenState,
): BackingDoc {
  return { ...ref, on: backingOn, levelDb: backingLevelDb, offsetMs: backingOffsetMs }
}

function scopeOf({ scope }: ListenState): ScopeDoc {
  return scope.kind === 'snapshots' ? { kind: 'snapshots' } : scope
}
