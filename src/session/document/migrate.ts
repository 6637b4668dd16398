import { quoted } from '../../core'
import { SESSION_VERSION } from './session-doc'
import { SessionError } from './session-error'

/** Turns a document of one version into one of the next. The result is checked, so that it need not check anything. */
export type MigrationStep = (doc: Readonly<Record<string, unknown>>) => Readonly<Record<string, unknown>>

/** Steps by the version that they begin from. A change of the document's form adds one. */
const sessionSteps: ReadonlyMap<number, MigrationStep> = new Map([[1, withNamedVersions]])

/**
 * Takes a session document of any version up to the current one.
 * @param json already parsed from text
 * @returns its content in the form of the current version, which is still to be checked
 * @throws SessionError when it is no session document, or is newer than this program
 */
export function migrated(
  json: unknown,
  steps: ReadonlyMap<number, MigrationStep> = sessionSteps,
  current: number = SESSION_VERSION,
): unknown {
  if (!isObject(json)) throw SessionError.invalid('', 'a session document', quoted(json))
  const { format, version } = json
  if (format !== 'evenhand-session')
    throw SessionError.invalid('format', '"evenhand-session"', quoted(format))
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    throw SessionError.invalid('version', 'a whole number from 1', quoted(version))
  if (version > current) throw SessionError.newer(version, current)
  let doc: Readonly<Record<string, unknown>> = json
  for (let from = version; from < current; from++) {
    const step = steps.get(from)
    if (!step) throw new RangeError(`no step from version ${from} of the session document`)
    doc = { ...step(doc), version: from + 1 }
  }
  return doc
}

/** From version 1: stored versions were chains without a name, and the sides of every trial "without" and "with". */
function withNamedVersions({ snapshots, trials, ...others }: Readonly<Record<string, unknown>>) {
  const unnamed = (chain: unknown) => (chain === null ? null : { name: '', chain })
  const sides = { bypassed: 'without', processed: 'with' }
  return {
    ...others,
    snapshots: isObject(snapshots)
      ? { ...snapshots, a: unnamed(snapshots.a), b: unnamed(snapshots.b) }
      : snapshots,
    trials: Array.isArray(trials)
      ? trials.map((trial) => (isObject(trial) ? { ...trial, sides } : trial))
      : trials,
  }
}

function isObject(json: unknown): json is Readonly<Record<string, unknown>> {
  return typeof json === 'object' && json !== null && !Array.isArray(json)
}
