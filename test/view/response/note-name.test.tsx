import { describe, expect, it } from 'vitest'
import { noteName } from '../../../src/view/response/note-name'

describe('note names', () => {
  // ISO 16:1975: A in the treble stave is 440 Hz. The others are the ends of a piano, middle C and a note above 3 kHz, in
  // equal temperament, from memory.
  it.each([
    [440, 'A4'],
    [27.5, 'A0'],
    [261.63, 'C4'],
    [4186.01, 'C8'],
    [246.94, 'B3'],
    [3000, 'F♯7'],
    [20, 'D♯0'],
  ])('of %d Hz is %s', (hz, name) => {
    expect(noteName(hz)).toBe(name)
  })

  it('change halfway between two notes, by ratio', () => {
    const halfway = 440 * 2 ** (0.5 / 12)
    expect([noteName(halfway * 0.999), noteName(halfway * 1.001)]).toEqual(['A4', 'A♯4'])
  })
})
