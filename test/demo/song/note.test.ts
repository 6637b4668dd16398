import { expect, it } from 'vitest'
import { noteFrequencyHz } from '../../../src/demo/song/note'

// ISO 16: A4 = 440 Hz; the others by twelve equal semitones to the octave.
it.each([
  ['A4', 440],
  ['A3', 220],
  ['C4', 261.63],
  ['C5', 523.25],
  ['E2', 82.41],
] as const)('%s is %f Hz', (note, frequencyHz) => {
  expect(noteFrequencyHz(note)).toBeCloseTo(frequencyHz, 2)
})
