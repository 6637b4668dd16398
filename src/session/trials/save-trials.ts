import { deliveredName, saveBlob } from '../../files/save'
import { trialsCsv } from './trial-csv'
import type { TrialRecord } from './trial-record'

/** Saves trials as a table. Call it from a click or a key press. */
export function saveTrials(trials: readonly TrialRecord[]): void {
  saveBlob(
    new Blob([trialsCsv(trials)], { type: 'text/csv;charset=utf-8' }),
    deliveredName('Blind trials', 'csv'),
  )
}
