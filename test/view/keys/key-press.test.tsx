import { describe, expect, it } from 'vitest'
import { keyTable, printedKey } from '../../../src/view/actions/key-table'
import { type KeyPress, keyHolderOf, keyRowOf } from '../../../src/view/keys/key-press'

const none = { ctrlKey: false, metaKey: false, altKey: false, shiftKey: false, repeat: false }

const keyActionOf = (press: KeyPress) => keyRowOf(press)?.action ?? null

describe('the table of keys', () => {
  it('gives every key one action, and every action one row', () => {
    const keys = keyTable.flatMap((row) => row.keys)
    expect(new Set(keys).size).toBe(keys.length)
    expect(new Set(keyTable.map(({ action }) => action)).size).toBe(keyTable.length)
  })

  it('leaves S, M and R, which mean solo, mute and record elsewhere, without a meaning', () => {
    for (const key of ['s', 'm', 'r', 'S', 'M', 'R']) expect(keyActionOf({ ...none, key })).toBeNull()
    expect(keyTable.filter(({ printed }) => /^[SMR]$/.test(printed))).toEqual([])
  })

  it('plays with Space and switches sides with X', () => {
    expect(printedKey('play')).toBe('Space')
    expect(printedKey('side')).toBe('X')
  })
})

describe('keyRowOf', () => {
  it('knows every single key that the sheet prints, in small and in capital letters', () => {
    for (const { printed, action } of keyTable) {
      if (printed.includes('Ctrl')) continue
      const key = printed === 'Space' ? ' ' : printed
      expect(keyActionOf({ ...none, key })).toBe(action)
      expect(keyActionOf({ ...none, key: key.toLowerCase() })).toBe(action)
    }
  })

  it('undoes and redoes with Ctrl or Cmd, also while the key is held', () => {
    expect(keyActionOf({ ...none, key: 'z', ctrlKey: true, repeat: true })).toBe('undo')
    expect(keyActionOf({ ...none, key: 'Z', metaKey: true, shiftKey: true })).toBe('redo')
    expect(keyActionOf({ ...none, key: 'y', ctrlKey: true, repeat: true })).toBe('redo')
  })

  it('leaves all other combinations to the browser', () => {
    expect(keyActionOf({ ...none, key: 's', ctrlKey: true })).toBeNull()
    expect(keyActionOf({ ...none, key: 'r', metaKey: true })).toBeNull()
    expect(keyActionOf({ ...none, key: 'y', metaKey: true })).toBeNull()
    expect(keyActionOf({ ...none, key: 'y' })).toBeNull()
    expect(keyActionOf({ ...none, key: 'b', altKey: true })).toBeNull()
    expect(keyActionOf({ ...none, key: 'z', ctrlKey: true, altKey: true })).toBeNull()
  })

  it('takes brackets that are typed with Ctrl and Alt', () => {
    expect(keyActionOf({ ...none, key: '[', ctrlKey: true, altKey: true })).toBe('previous-stage')
  })

  it('does not switch to and fro while a key is held', () => {
    expect(keyActionOf({ ...none, key: ' ', repeat: true })).toBeNull()
    expect(keyActionOf({ ...none, key: 'x', repeat: true })).toBeNull()
  })
})

describe('keyHolderOf', () => {
  it.each([
    ['INPUT', 'text', null, 'text'],
    ['INPUT', 'number', null, 'text'],
    ['SELECT', '', null, 'list'],
    ['TEXTAREA', '', null, 'text'],
    ['INPUT', 'range', null, 'none'],
    ['INPUT', 'radio', null, 'none'],
    ['INPUT', 'checkbox', null, 'button'],
    ['BUTTON', '', null, 'button'],
    ['SUMMARY', '', null, 'button'],
    ['DIV', '', 'switch', 'button'],
    ['DIV', '', 'slider', 'none'],
    ['BODY', '', null, 'none'],
  ])('%s %s %s is %s', (tag, type, role, holder) => {
    expect(keyHolderOf(tag, type, role, false)).toBe(holder)
  })

  it('takes an editable element for a text field', () => {
    expect(keyHolderOf('DIV', '', null, true)).toBe('text')
  })
})
