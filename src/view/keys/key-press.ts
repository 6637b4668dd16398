import { type KeyRow, keyTable } from '../actions/key-table'

/** The parts of a key press that decide. */
export interface KeyPress {
  readonly key: string
  readonly ctrlKey: boolean
  readonly metaKey: boolean
  readonly altKey: boolean
  readonly shiftKey: boolean
  readonly repeat: boolean
}

const rows: ReadonlyMap<string, KeyRow> = new Map(
  keyTable.flatMap((row) => row.keys.map((name): [string, KeyRow] => [name, row])),
)

/** The row of the table that a key press asks for, or null. */
export function keyRowOf(press: KeyPress): KeyRow | null {
  const name = pressName(press)
  const row = name === null ? null : rows.get(name)
  // A held key would switch back and forth; undo and redo may go on.
  return !row || (press.repeat && !changesChain(row)) ? null : row
}

/** Whether a row takes back or repeats a change: it works from lists too, and with single keys switched off. */
export function changesChain({ action }: KeyRow): boolean {
  return action === 'undo' || action === 'redo'
}

/**
 * How the table spells a key press: "x", or "ctrl+shift+z". Null where Alt is held, except for brackets, which some
 * keyboards type with Ctrl and Alt (AltGr).
 */
function pressName({ key, ctrlKey, metaKey, altKey, shiftKey }: KeyPress): string | null {
  const letter = key.toLowerCase()
  if ((ctrlKey || metaKey) && !altKey)
    return `${metaKey ? 'meta' : 'ctrl'}+${shiftKey ? 'shift+' : ''}${letter}`
  return altKey && key !== '[' && key !== ']' ? null : letter
}

/** How an element under focus treats keys. */
export type KeyHolder = 'text' | 'list' | 'button' | 'none'

const TEXT_INPUTS = new Set(['text', 'number', 'search', 'email', 'url', 'tel', 'password', ''])

/**
 * Text fields keep all keys, lists those that print something; buttons and the like keep Space, or it would press
 * them as well.
 */
export function keyHolderOf(
  tagName: string,
  type: string,
  role: string | null,
  editable: boolean,
): KeyHolder {
  const tag = tagName.toLowerCase()
  if (editable || tag === 'textarea') return 'text'
  if (tag === 'select') return 'list'
  if (tag === 'input' && TEXT_INPUTS.has(type)) return 'text'
  if (tag === 'button' || tag === 'summary' || tag === 'a') return 'button'
  if (tag === 'input' && type === 'checkbox') return 'button'
  return role === 'button' || role === 'switch' || role === 'menuitem' ? 'button' : 'none'
}
