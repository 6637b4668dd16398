import * as v from 'valibot'
import { boundedList, MAX_ID_LENGTH, type NumberParameter } from '../../core'
import { FIRST_MONITOR_DB } from '../listening/listen-store'
import { backingLevelParameter, backingOffsetParameter, monitorParameter } from '../listening/parameters'
import { FEWEST_ROUNDS, MOST_ROUNDS } from '../trials/trial-record'
import { MAX_TRIALS, SESSION_VERSION } from './session-doc'

/** The longest name or sentence, in UTF-16 units: longer than any file's name. */
const MAX_TEXT_LENGTH = 1024
const MAX_HASH_LENGTH = 128
/** Matching gains and times beyond these are no measurements. */
const MOST_GAIN_DB = 300
const LONGEST_ROUND_SECONDS = 1e9

/** An object with these entries and no others. */
function entries<Entries extends v.ObjectEntries>(of: Entries) {
  return v.strictObject(of, (issue) =>
    issue.expected === 'never'
      ? 'no such entry'
      : issue.expected === 'Object'
        ? 'an object'
        : 'this entry to be there',
  )
}

function text(maxLength: number) {
  return v.pipe(v.string('text'), v.maxLength(maxLength, `at most ${maxLength} characters`))
}

function numberFrom(min: number, max: number, unit = '') {
  const expected = `a number from ${min} to ${max}${unit && ` (${unit})`}`
  return v.pipe(v.number(expected), v.minValue(min, expected), v.maxValue(max, expected))
}

function wholeFrom(min: number, max: number) {
  const expected = `a whole number from ${min} to ${max}`
  return v.pipe(v.number(expected), v.integer(expected), v.minValue(min, expected), v.maxValue(max, expected))
}

function within({ min, max, unit }: NumberParameter) {
  return numberFrom(min, max, unit)
}

const toggle = v.boolean('true or false')
const id = v.pipe(text(MAX_ID_LENGTH), v.minLength(1, 'an id that is not empty'))
const side = v.picklist(['bypassed', 'processed'], '"bypassed" or "processed"')
const soundRef = { hash: v.nullable(text(MAX_HASH_LENGTH)), name: text(MAX_TEXT_LENGTH) }

/** A range of frames; `end` is what its ends are. */
function frameRange(end: ReturnType<typeof numberFrom> | ReturnType<typeof wholeFrom>) {
  return v.pipe(
    entries({ from: end, to: end }),
    v.check(({ from, to }) => from < to, 'a range whose end lies behind its beginning'),
  )
}
const loop = frameRange(wholeFrom(0, Number.MAX_SAFE_INTEGER))
const seen = frameRange(numberFrom(0, Number.MAX_SAFE_INTEGER))

const scope = v.variant(
  'kind',
  [
    entries({ kind: v.literal('chain') }),
    entries({ kind: v.literal('stage'), stageId: id }),
    entries({ kind: v.literal('band'), stageId: id, bandIndex: wholeFrom(0, 255) }),
    entries({ kind: v.literal('snapshots') }),
  ],
  'one of "chain", "stage", "band", "snapshots"',
)

const trial = entries({
  number: wholeFrom(1, Number.MAX_SAFE_INTEGER),
  begunAt: v.pipe(text(MAX_TEXT_LENGTH), v.isoTimestamp('a time in ISO 8601')),
  takeName: text(MAX_TEXT_LENGTH),
  compared: text(MAX_TEXT_LENGTH),
  kind: v.picklist(['name-x', 'which-of-two'], '"name-x" or "which-of-two"'),
  rounds: wholeFrom(FEWEST_ROUNDS, MOST_ROUNDS),
  matching: entries({
    bypassedDb: numberFrom(-MOST_GAIN_DB, MOST_GAIN_DB, 'dB'),
    processedDb: numberFrom(-MOST_GAIN_DB, MOST_GAIN_DB, 'dB'),
    measuredOver: v.picklist(['loop', 'take', 'nothing'], '"loop", "take" or "nothing"'),
  }),
  answers: boundedList(
    entries({ hidden: side, said: side, seconds: numberFrom(0, LONGEST_ROUND_SECONDS, 's') }),
    { maxItems: MOST_ROUNDS, expected: 'a list of answers', expectedCount: `at most ${MOST_ROUNDS} answers` },
  ),
  finished: toggle,
})

/** A session document of the current version. Its chains are checked on their own, by the schema of chains. */
export const sessionSchema = entries({
  format: v.literal('evenhand-session', '"evenhand-session"'),
  version: v.literal(SESSION_VERSION, `${SESSION_VERSION}`),
  take: v.nullable(entries(soundRef)),
  backing: v.nullable(
    entries({
      ...soundRef,
      on: toggle,
      levelDb: within(backingLevelParameter),
      offsetMs: within(backingOffsetParameter),
    }),
  ),
  chain: v.unknown(),
  snapshots: entries({ a: v.unknown(), b: v.unknown() }),
  compared: entries({ scope, listeningPoint: v.nullable(id) }),
  listening: entries({
    side,
    difference: toggle,
    matched: toggle,
    monitorDb: numberFrom(monitorParameter.min, FIRST_MONITOR_DB, 'dB'),
    loop: v.nullable(loop),
    lastLoop: v.nullable(loop),
  }),
  trials: boundedList(trial, {
    maxItems: MAX_TRIALS,
    expected: 'a list of trials',
    expectedCount: `at most ${MAX_TRIALS} trials`,
  }),
  view: entries({
    selectedStage: v.nullable(id),
    seen: v.nullable(seen),
    // Documents of before there was one have none.
    spectrogram: v.optional(toggle, false),
  }),
})
