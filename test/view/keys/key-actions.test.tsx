import { describe, expect, it } from 'vitest'
import { keyActionOf, keyHolderOf, keyRows } from '../../../src/view/keys/key-actions'

const none = { ctrlKey: false, metaKey: false, altKey: false, shiftKey: false, repeat: false }

describe('keyActionOf', () => {
  it('knows every single key that the sheet prints, in small and in capital letters', () => {
    for (const { keys, action } of keyRows) {
      if (keys.includes('Ctrl')) continue
      const key = keys === 'Space' ? ' ' : keys
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
