// @vitest-environment happy-dom
import { afterEach, describe, expect, it, vi } from 'vitest'
import { deliveredName, saveBlob } from '../../src/files/save'

describe('deliveredName', () => {
  it.each([
    ['Take 3.wav', 'Take 3 - evenhand.wav'],
    ['Take 3.FLAC', 'Take 3 - evenhand.wav'],
    ['take.final.mp3', 'take.final - evenhand.wav'],
    ['Take 3', 'Take 3 - evenhand.wav'],
    ['Take 3 - evenhand.wav', 'Take 3 - evenhand.wav'],
    ['Take 3 - evenhand, 32-bit float.wav', 'Take 3 - evenhand.wav'],
    ['Take 3 - evenhand, dry, loud.wav', 'Take 3 - evenhand, dry, loud - evenhand.wav'],
    ['Lied für Zoë.m4a', 'Lied für Zoë - evenhand.wav'],
    ['a/b\\c:d*e?f"g<h>i|j\n.wav', 'a-b-c-d-e-f-g-h-i-j- - evenhand.wav'],
    ['.wav', 'Take - evenhand.wav'],
    ['', 'Take - evenhand.wav'],
  ])('%j is delivered as %j', (takeName, expected) => {
    expect(deliveredName(takeName)).toBe(expected)
  })

  it('takes another extension, and the kind of file', () => {
    expect(deliveredName('Take 3.wav', 'html')).toBe('Take 3 - evenhand.html')
    expect(deliveredName('Take 3.wav', 'wav', '24-bit')).toBe('Take 3 - evenhand, 24-bit.wav')
  })
})

describe('a delivered name that file systems and screens can take', () => {
  const bytesOf = (text: string) => new TextEncoder().encode(text).length

  it('has no marks that turn text around, no zero-width marks, and no leading dots', () => {
    const turned = 'take \u202Egnp.wav \u2066\u200F\u200B\uFEFF\u00AD3.wav'
    expect(deliveredName(turned)).toBe('take gnp.wav 3 - evenhand.wav')
    expect(deliveredName('..take.wav')).toBe('take - evenhand.wav')
    expect(deliveredName('\u202E.wav')).toBe('Take - evenhand.wav')
  })

  it.each([
    ['a', 'letters of one byte'],
    ['é', 'letters of two bytes'],
    ['語', 'letters of three bytes'],
    ['🎤', 'letters of four bytes'],
    ['e\u0301', 'letters with a combining accent'],
    ['👩🏽', 'signs with a modifier'],
  ])(
    'of many %j (%s) leaves room in 255 bytes for what a browser adds, cut at a whole character',
    (letter) => {
      const name = deliveredName(`${letter.repeat(250)}.wav`, 'wav', '32-bit float')
      expect(name).toMatch(/ - evenhand, 32-bit float\.wav$/)
      // " (1)" for a second file of the name, and ".crdownload" while it is being saved.
      expect(bytesOf(name) + 4 + 11).toBeLessThanOrEqual(255)
      expect(bytesOf(name)).toBeGreaterThan(200)
      expect(name.replace(/ - evenhand.*$/, '').replaceAll(letter, '')).toBe('')
    },
  )
})

describe('saveBlob', () => {
  afterEach(() => {
    vi.useRealTimers()
    vi.restoreAllMocks()
  })

  it('downloads under the name, and frees the address only when the download has surely begun', () => {
    vi.useFakeTimers()
    vi.spyOn(URL, 'createObjectURL').mockReturnValue('blob:take')
    const revoke = vi.spyOn(URL, 'revokeObjectURL').mockReturnValue()
    const clicked: string[] = []
    vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(function (this: HTMLAnchorElement) {
      clicked.push(this.href, this.download)
    })
    saveBlob(new Blob(['x']), 'Take 3 - evenhand.wav')
    expect(clicked).toEqual(['blob:take', 'Take 3 - evenhand.wav'])
    vi.advanceTimersByTime(30_000)
    expect(revoke).not.toHaveBeenCalled()
    vi.advanceTimersByTime(15_000)
    expect(revoke).toHaveBeenCalledWith('blob:take')
  })
})
