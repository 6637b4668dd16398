import { probabilityByChance } from '../../core'
import { shownName } from '../../files/file-name'
import { rightOf, type TrialAnswer, type TrialKind, type TrialRecord } from './trial-record'

const columns = [
  'trial',
  'begun (UTC)',
  'take',
  'compared',
  'side 1',
  'side 2',
  'kind',
  'rounds',
  'state',
  'right',
  'probability by chance',
  'matched over',
  'gain of side 1 (dB)',
  'gain of side 2 (dB)',
  'round',
  'hidden name',
  'was',
  'said',
  'round right (1 or 0)',
  'time (s)',
]

const kindNames: Readonly<Record<TrialKind, string>> = {
  'name-x': 'X is one of the two',
  'which-of-two': 'which of two is side 2',
}

/**
 * Trials as a table, one row for each round that was answered, and one for a trial without any. Comma-separated
 * values as RFC 4180 has them: CRLF behind each line, one header line, fields quoted where they have to be.
 */
export function trialsCsv(trials: readonly TrialRecord[]): string {
  const rows = trials.map(withoutMarks).flatMap((trial) => {
    const own = trialFields(trial)
    if (trial.answers.length === 0) return [[...own, '', '', '', '', '', '']]
    return trial.answers.map((answer, index) => [...own, ...answerFields(trial, answer, index)])
  })
  return [columns, ...rows].map((fields) => `${fields.map(field).join(',')}\r\n`).join('')
}

/** Without the marks that set names apart in a sentence: a field of a table is apart. */
function withoutMarks(trial: TrialRecord): TrialRecord {
  const { bypassed, processed } = trial.sides
  return {
    ...trial,
    compared: shownName(trial.compared),
    sides: { bypassed: shownName(bypassed), processed: shownName(processed) },
  }
}

function trialFields(trial: TrialRecord): string[] {
  const { number, begunAt, takeName, compared, sides, kind, rounds, matching, finished } = trial
  const right = rightOf(trial)
  return [
    String(number),
    begunAt,
    takeName,
    compared,
    sides.bypassed,
    sides.processed,
    kindNames[kind],
    String(rounds),
    finished ? 'finished' : 'abandoned',
    finished ? String(right) : '',
    finished ? String(probabilityByChance(right, rounds)) : '',
    matching.measuredOver,
    matching.bypassedDb.toFixed(2),
    matching.processedDb.toFixed(2),
  ]
}

function answerFields(
  { kind, sides }: TrialRecord,
  { hidden, said, seconds }: TrialAnswer,
  index: number,
): string[] {
  return [
    String(index + 1),
    kind === 'name-x' ? 'X' : 'first',
    sides[hidden],
    sides[said],
    hidden === said ? '1' : '0',
    seconds.toFixed(1),
  ]
}

/** What a spreadsheet would take for a formula; signed numbers are none. Source: OWASP, "CSV Injection". */
const FORMULA = /^(?:[=@\t\r]|[+-](?![\d.]+$))/

function field(text: string): string {
  const safe = FORMULA.test(text) ? `'${text}` : text
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}
