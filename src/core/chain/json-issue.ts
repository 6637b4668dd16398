import type * as v from 'valibot'

/** The most of a value, or of a key, that a message repeats. */
const QUOTED_LENGTH = 60

/** What is wrong in a document: where, what was expected there, and what was found, as short text. */
export interface JsonIssue {
  /** Such as `stages[2].settings.ratio`; '' is the document itself. */
  readonly path: string
  readonly expected: string
  readonly received: string
}

/** An issue of a schema whose messages say what was expected. */
export function jsonIssue(issue: v.BaseIssue<unknown>): JsonIssue {
  const path = (issue.path ?? []).reduce((text, { key }) => {
    if (typeof key === 'number') return `${text}[${key}]`
    return text ? `${text}.${shortened(String(key))}` : shortened(String(key))
  }, '')
  return { path, expected: issue.message, received: quoted(issue.input) }
}

/** A value as short text for a message; what lists and objects hold is not looked at, however much it is. */
export function quoted(value: unknown): string {
  if (typeof value === 'string') return shortened(JSON.stringify(value.slice(0, QUOTED_LENGTH)))
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`
  if (typeof value === 'object' && value !== null) return 'an object'
  return value === undefined ? 'nothing' : shortened(String(value))
}

function shortened(text: string): string {
  return text.length > QUOTED_LENGTH ? `${text.slice(0, QUOTED_LENGTH - 3)}...` : text
}
