/** What a key press can ask for anywhere on the page. */
export type KeyAction =
  | 'play'
  | 'side'
  | 'previous-stage'
  | 'next-stage'
  | 'switch-stage'
  | 'stage-earlier'
  | 'stage-later'
  | 'keep'
  | 'backing'
  | 'loop'
  | 'loop-from'
  | 'loop-to'
  | 'scope'
  | 'difference'
  | 'matched'
  | 'trial'
  | 'deliver'
  | 'projector'
  | 'open'
  | 'undo'
  | 'redo'
  | 'keys'

interface KeyRow {
  readonly action: KeyAction
  /** The keys as they are printed. */
  readonly keys: string
  readonly does: string
}

/** Every key, in the order in which the sheet shows them. */
export const keyRows: readonly KeyRow[] = [
  { action: 'play', keys: 'Space', does: 'play, stop' },
  { action: 'side', keys: 'X', does: 'without, with' },
  { action: 'previous-stage', keys: '[', does: 'the stage before' },
  { action: 'next-stage', keys: ']', does: 'the stage after' },
  { action: 'switch-stage', keys: 'N', does: 'the stage at hand on, off' },
  { action: 'stage-earlier', keys: ',', does: 'the stage at hand earlier on the path' },
  { action: 'stage-later', keys: '.', does: 'the stage at hand later on the path' },
  { action: 'keep', keys: 'K', does: 'keep this version, as A and then as B' },
  { action: 'scope', keys: 'S', does: 'compare the whole chain, or this stage' },
  { action: 'backing', keys: 'B', does: 'alone, or with the backing' },
  { action: 'loop', keys: 'L', does: 'loop on, off' },
  { action: 'loop-from', keys: 'F', does: 'the loop begins here' },
  { action: 'loop-to', keys: 'G', does: 'the loop ends here' },
  { action: 'difference', keys: 'R', does: 'hear only what was removed' },
  { action: 'matched', keys: 'M', does: 'matched on, off' },
  { action: 'trial', keys: 'T', does: 'blind trial of what is compared' },
  { action: 'deliver', keys: 'D', does: 'deliver the file' },
  { action: 'projector', keys: 'P', does: 'projector view on, off' },
  { action: 'open', keys: 'O', does: 'open a take' },
  { action: 'undo', keys: 'Ctrl or Cmd Z', does: 'undo' },
  { action: 'redo', keys: 'Ctrl or Cmd Shift Z, Ctrl Y', does: 'redo' },
  { action: 'keys', keys: '?', does: 'this sheet' },
]

const single: ReadonlyMap<string, KeyAction> = new Map([
  [' ', 'play'],
  ['x', 'side'],
  ['[', 'previous-stage'],
  [']', 'next-stage'],
  ['n', 'switch-stage'],
  [',', 'stage-earlier'],
  ['.', 'stage-later'],
  ['k', 'keep'],
  ['f', 'loop-from'],
  ['g', 'loop-to'],
  ['d', 'deliver'],
  ['b', 'backing'],
  ['l', 'loop'],
  ['s', 'scope'],
  ['r', 'difference'],
  ['m', 'matched'],
  ['t', 'trial'],
  ['p', 'projector'],
  ['o', 'open'],
  ['?', 'keys'],
])

/** The parts of a key press that decide. */
export interface KeyPress {
  readonly key: string
  readonly ctrlKey: boolean
  readonly metaKey: boolean
  readonly altKey: boolean
  readonly shiftKey: boolean
  readonly repeat: boolean
}

/** The action of a key press, or null. On some keyboards brackets are typed with Ctrl and Alt held (AltGr). */
export function keyActionOf({ key, ctrlKey, metaKey, altKey, shiftKey, repeat }: KeyPress): KeyAction | null {
  const letter = key.toLowerCase()
  const command = (ctrlKey || metaKey) && !altKey
  if (command && letter === 'z') return shiftKey ? 'redo' : 'undo'
  if (command) return letter === 'y' && !metaKey && !shiftKey ? 'redo' : null
  const bracket = key === '[' || key === ']'
  if (altKey && !bracket) return null
  // A held key would switch to and fro.
  return repeat ? null : (single.get(letter) ?? null)
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
