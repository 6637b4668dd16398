import { type HiddenSide, probabilityByChance } from '../../core'
import { rightOf, type TrialAnswer, type TrialKind, type TrialRecord } from './trial-record'

const columns = [
  'trial',
  'begun (UTC)',
  'take',
  'compared',
  'kind',
  'rounds',
  'state',
  'right',
  'probability by chance',
  'matched over',
  'gain of without (dB)',
  'gain of with (dB)',
  'round',
  'hidden name',
  'was',
  'said',
  'round right (1 or 0)',
  'time (s)',
]

const sideNames: Readonly<Record<HiddenSide, string>> = { bypassed: 'without', processed: 'with' }

const kindNames: Readonly<Record<TrialKind, string>> = {
  'name-x': 'X is one of the two: without or with',
  'which-of-two': 'which of two is with',
}

/**
 * Trials as a table, one row for each round that was answered, and one for a trial without any. Comma-separated
 * values as RFC 4180 has them: CRLF behind each line, one header line, fields quoted where they have to be.
 */
export function trialsCsv(trials: readonly TrialRecord[]): string {
  const rows = trials.flatMap((trial) => {
    const own = trialFields(trial)
    if (trial.answers.length === 0) return [[...own, '', '', '', '', '', '']]
    return trial.answers.map((answer, index) => [...own, ...answerFields(trial.kind, answer, index)])
  })
  return [columns, ...rows].map((fields) => `${fields.map(field).join(',')}\r\n`).join('')
}

function trialFields(trial: TrialRecord): string[] {
  const { number, begunAt, takeName, compared, kind, rounds, matching, finished } = trial
  const right = rightOf(trial)
  return [
    String(number),
    begunAt,
    takeName,
    compared,
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

function answerFields(kind: TrialKind, { hidden, said, seconds }: TrialAnswer, index: number): string[] {
  return [
    String(index + 1),
    kind === 'name-x' ? 'X' : 'A',
    sideNames[hidden],
    sideNames[said],
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
