/** What stands where a sound is silent or too short for a measure. */
export const NOT_MEASURABLE = 'not measurable'

/** What stands where a sound has no sibilants, or none that its vowels can be set against. */
export const NO_SIBILANTS = 'no sibilants found next to vowels'

/** What stands where a pause holds nothing at all. */
export const DIGITAL_SILENCE = 'digital silence'

/** Half the smallest step of 24 bits, dBFS: what lies lower is no room and no microphone, but what a filter left. */
const SILENT_BELOW_DBFS = -144

/** A noise floor in dBFS that no recording has: the pauses were muted. */
export function isDigitalSilence(noiseFloorDbfs: number | null): boolean {
  return noiseFloorDbfs !== null && noiseFloorDbfs < SILENT_BELOW_DBFS
}
