import * as v from 'valibot'
import { type StageKind, stageDefinitions, stageKinds } from '../stages'
import { type ChainDoc, MAX_STAGES } from './chain-doc'
import { ChainError } from './chain-error'
import { settingsSchema } from './settings-schema'

const id = v.pipe(v.string('a name in quotes'), v.minLength(1, 'a name that is not empty'))

function stageSchema(kind: StageKind) {
  return v.strictObject(
    {
      id,
      kind: v.literal(kind),
      on: v.boolean('true or false'),
      settings: settingsSchema(stageDefinitions[kind].parameters),
    },
    (issue) => (issue.expected === 'never' ? 'no such entry' : 'this entry to be there'),
  )
}

const kindNames = stageKinds.map((kind) => `"${kind}"`).join(', ')

const chainSchema = v.strictObject(
  {
    format: v.literal('evenhand-chain', '"evenhand-chain"'),
    version: v.literal(1, '1, the version this program writes'),
    stages: v.pipe(
      v.array(v.variant('kind', stageKinds.map(stageSchema), `one of ${kindNames}`), 'a list of stages'),
      v.maxLength(MAX_STAGES, `at most ${MAX_STAGES} stages`),
    ),
  },
  (issue) => (issue.expected === 'never' ? 'no such entry' : 'an object with format, version and stages'),
)

/**
 * Checks that `json` (already parsed from text) is a chain and returns it with nothing added or taken away, but
 * for a ratio of "infinity", which becomes Infinity.
 * @throws ChainError naming the path and what was expected there
 */
export function parseChain(json: unknown): ChainDoc {
  const result = v.safeParse(chainSchema, json, { abortEarly: true })
  if (!result.success) throw chainError(result.issues[0])
  // The schema is made from the same table as the types, which is more than a loop over it can show.
  const chain = result.output as ChainDoc
  const seen = new Set<string>()
  for (const [index, stage] of chain.stages.entries()) {
    if (seen.has(stage.id))
      throw new ChainError(`stages[${index}].id`, 'a name no other stage has', quoted(stage.id))
    seen.add(stage.id)
  }
  return chain
}

function chainError(issue: v.BaseIssue<unknown>): ChainError {
  const path = (issue.path ?? []).reduce(
    (text, { key }) =>
      typeof key === 'number' ? `${text}[${key}]` : text ? `${text}.${String(key)}` : String(key),
    '',
  )
  return new ChainError(path, issue.message, quoted(issue.input))
}

/** A value as short text for a message. */
function quoted(value: unknown): string {
  if (typeof value === 'number') return String(value)
  const text = JSON.stringify(value) ?? 'nothing'
  return text.length > 60 ? `${text.slice(0, 57)}...` : text
}
