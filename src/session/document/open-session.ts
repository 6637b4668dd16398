import { applySession, type SessionSounds } from './apply-session'
import { parseSession } from './parse-session'
import type { SessionParts } from './session-parts'

/**
 * Checks a session document and puts the app into the state that it describes; see `applySession`.
 * @param json already parsed from text
 * @throws SessionError where it is none; nothing has changed then
 */
export function openSession(app: SessionParts, json: unknown, sounds?: SessionSounds): void {
  applySession(app, parseSession(json), sounds)
}
