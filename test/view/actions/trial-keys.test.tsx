import { describe, expect, it } from 'vitest'
import { trialKeyOf, trialKeyRows } from '../../../src/view/actions/trial-keys'

describe('trialKeyOf', () => {
  it.each([
    ['1', 'name-x', 'bypassed'],
    ['2', 'name-x', 'processed'],
    ['3', 'name-x', 'x'],
    ['a', 'name-x', 'bypassed'],
    ['B', 'name-x', 'processed'],
    ['X', 'name-x', 'x'],
    ['1', 'which-of-two', 'a'],
    ['2', 'which-of-two', 'b'],
    ['A', 'which-of-two', 'a'],
    ['b', 'which-of-two', 'b'],
  ] as const)('%s in %s listens to %s', (key, kind, choice) => {
    expect(trialKeyOf(key, kind, 'none', true)).toEqual({ does: 'listen', choice })
    expect(trialKeyOf(key, kind, 'button', true)).toEqual({ does: 'listen', choice })
    expect(trialKeyOf(key, kind, 'none', false)).toBeNull()
  })

  it('knows every key that the sheet of keys prints', () => {
    const named = new Map([
      ['←', 'ArrowLeft'],
      ['→', 'ArrowRight'],
      ['Space', ' '],
    ])
    for (const { printed } of trialKeyRows) {
      // The dialog itself answers to this one.
      if (printed === 'Esc') continue
      for (const key of printed.split(', ')) {
        expect(trialKeyOf(named.get(key) ?? key, 'name-x', 'none', true), key).not.toBeNull()
      }
    }
  })

  it('knows no third of two, and nothing beyond', () => {
    expect(trialKeyOf('3', 'which-of-two', 'none', true)).toBeNull()
    expect(trialKeyOf('x', 'which-of-two', 'none', true)).toBeNull()
    for (const key of ['0', '4', 'c', 'Tab', 'Shift', ''])
      expect(trialKeyOf(key, 'name-x', 'none', true)).toBeNull()
  })

  it.each([
    ['name-x', 'bypassed', 'processed'],
    ['which-of-two', 'processed', 'bypassed'],
  ] as const)('chooses the answer that stands there: in %s left is %s, right is %s', (kind, left, right) => {
    expect(trialKeyOf('ArrowLeft', kind, 'none', false)).toEqual({ does: 'say', said: left })
    expect(trialKeyOf('ArrowRight', kind, 'radio-to-choose', false)).toEqual({ does: 'say', said: right })
    expect(trialKeyOf('ArrowLeft', kind, 'slider', true)).toBeNull()
  })

  it('leaves buttons their Enter and Space, and an answer not chosen yet its Space', () => {
    expect(trialKeyOf('Enter', 'name-x', 'button', true)).toBeNull()
    expect(trialKeyOf(' ', 'name-x', 'button', true)).toBeNull()
    expect(trialKeyOf(' ', 'name-x', 'radio-to-choose', true)).toBeNull()
    expect(trialKeyOf('Enter', 'name-x', 'radio-to-choose', false)).toEqual({ does: 'answer' })
    expect(trialKeyOf(' ', 'name-x', 'slider', true)).toEqual({ does: 'play' })
  })
})
