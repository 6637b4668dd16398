/** Shown where a sound is silent or too short for a measure. */
export const NOT_MEASURABLE = 'not measurable'

/** Shown where pauses are muted. */
export const DIGITAL_SILENCE = 'digital silence'

/** Half the smallest step of 24 bits, dBFS: lower levels come from no room or microphone, only from a filter’s decay. */
const SILENT_BELOW_DBFS = -144

/** A noise floor in dBFS that no recording has: the pauses were muted. */
export function isDigitalSilence(noiseFloorDbfs: number | null): boolean {
  return noiseFloorDbfs !== null && noiseFloorDbfs < SILENT_BELOW_DBFS
}
