import { describe, expect, it } from 'vitest'
import { FileError } from '../../src/files/file-error'
import { isolated, shownName } from '../../src/files/file-name'

const RIGHT_TO_LEFT_OVERRIDE = '\u202E'
const POP_ISOLATE = '\u2069'

describe('names of files on the screen', () => {
  it('lose the marks that embed, override or isolate a direction, and line breaks', () => {
    expect(shownName(`take${RIGHT_TO_LEFT_OVERRIDE}gnp${POP_ISOLATE}.wav`)).toBe('takegnp.wav')
    expect(shownName('\u2066a\u2067b\u2068c\u202Ad\u202Be\u202Cf\u202Dg')).toBe('abcdefg')
    expect(shownName('a\nb\tc')).toBe('a b c')
  })

  it('keep letters of every script, and the joiners that belong to them', () => {
    for (const name of ['שיר 3.wav', 'می‌خواهم.wav', 'Zoë 👩‍🎤.wav']) expect(shownName(name)).toBe(name)
  })

  it('stand apart from the direction of the text around them, and cannot end that themselves', () => {
    expect(isolated('שיר.wav')).toBe('\u2068שיר.wav\u2069')
    expect(isolated(`a${POP_ISOLATE}${RIGHT_TO_LEFT_OVERRIDE}b`)).toBe('\u2068ab\u2069')
  })
})

it('an error about a file with a direction mark in its name reads in its order', () => {
  const name = `x${RIGHT_TO_LEFT_OVERRIDE}vaw.mp3`
  const { message, fileName } = new FileError('empty', name, 'is empty', 'Export it again.')
  expect(message).toBe('“\u2068xvaw.mp3\u2069” is empty. Export it again.')
  expect(fileName).toBe(name)
})
