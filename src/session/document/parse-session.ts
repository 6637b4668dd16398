import * as v from 'valibot'
import { type ChainDoc, ChainError, jsonIssue, parseChain, quoted, type Snapshot } from '../../core'
import type { SnapshotKey } from '../chain/snapshots'
import { migrated } from './migrate'
import type { SessionDoc } from './session-doc'
import { SessionError } from './session-error'
import { sessionSchema } from './session-schema'

/**
 * Checks that `json` (already parsed from text) is a session document of this version or an older one, and returns it
 * in the form of this version. Lists are counted before their contents are looked at.
 * @throws SessionError naming the path and what was expected there
 */
export function parseSession(json: unknown): SessionDoc {
  const result = v.safeParse(sessionSchema, migrated(json), { abortEarly: true })
  if (!result.success) {
    const { path, expected, received } = jsonIssue(result.issues[0])
    throw SessionError.invalid(path, expected, received)
  }
  const { chain: chainJson, snapshots, ...others } = result.output
  const session = {
    ...others,
    chain: chainAt('chain', chainJson),
    snapshots: { a: snapshotAt('a', snapshots.a), b: snapshotAt('b', snapshots.b) },
  }
  checkReferences(session)
  return session
}

function snapshotAt(key: SnapshotKey, json: { name: string; chain?: unknown } | null): Snapshot | null {
  return json && { name: json.name, chain: chainAt(`snapshots.${key}.chain`, json.chain) }
}

function chainAt(path: string, json: unknown): ChainDoc {
  try {
    return parseChain(json)
  } catch (error) {
    if (!(error instanceof ChainError)) throw error
    const full = error.path === '' ? path : `${path}.${error.path}`
    throw SessionError.invalid(full, error.expected, error.received)
  }
}

/** What one part of the document says of another. */
function checkReferences({ chain, snapshots, compared, trials, view }: SessionDoc): void {
  const { selectedStage } = view
  const isSelected =
    selectedStage === null ? chain.stages.length === 0 : chain.stages.some(({ id }) => id === selectedStage)
  if (!isSelected)
    throw SessionError.invalid(
      'view.selectedStage',
      'the id of a stage of the chain, or null without stages',
      quoted(selectedStage),
    )
  if (compared.scope.kind === 'snapshots' && !snapshots.a && !snapshots.b)
    throw SessionError.invalid('snapshots', 'a stored version, since those are compared', 'none')
  for (const [index, { answers, rounds, finished }] of trials.entries()) {
    const fits = finished ? answers.length === rounds : answers.length <= rounds
    if (!fits)
      throw SessionError.invalid(
        `trials[${index}].answers`,
        `${finished ? '' : 'at most '}${rounds} answers`,
        quoted(answers),
      )
  }
}
