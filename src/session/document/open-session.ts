import type { App } from '../app'
import { applySession, type SessionSounds } from './apply-session'
import { parseSession } from './parse-session'

/**
 * Checks a session document and puts the app into the state that it describes; see `applySession`.
 * @param json already parsed from text
 * @throws SessionError where it is none; nothing has changed then
 */
export function openSession(app: App, json: unknown, sounds?: SessionSounds): void {
  applySession(app, parseSession(json), sounds)
}
