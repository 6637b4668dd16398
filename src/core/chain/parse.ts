import * as v from 'valibot'
import { type StageKind, stageDefinitions, stageKinds } from '../stages'
import { type ChainDoc, MAX_STAGES } from './chain-doc'
import { ChainError } from './chain-error'
import { jsonIssue, quoted } from './json-issue'
import { boundedList, settingsSchema } from './settings-schema'

/** The longest id of a stage, in UTF-16 units: far longer than those that the program gives. */
export const MAX_ID_LENGTH = 64

const id = v.pipe(
  v.string('a name in quotes'),
  v.minLength(1, 'a name that is not empty'),
  v.maxLength(MAX_ID_LENGTH, `a name of at most ${MAX_ID_LENGTH} characters`),
)

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
    stages: boundedList(v.variant('kind', stageKinds.map(stageSchema), `one of ${kindNames}`), {
      maxItems: MAX_STAGES,
      expected: 'a list of stages',
      expectedCount: `at most ${MAX_STAGES} stages`,
    }),
  },
  (issue) => (issue.expected === 'never' ? 'no such entry' : 'an object with format, version and stages'),
)

/**
 * Checks that `json` (already parsed from text) is a chain and returns it unchanged, except that a ratio of "infinity"
 * becomes Infinity.
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
  const { path, expected, received } = jsonIssue(issue)
  return new ChainError(path, expected, received)
}
