import type { StoreApi } from 'zustand/vanilla'
import type { App } from '../../session/app'
import type { ScreenState } from '../context/screen-store'
import { moveSelected, selectNeighbour, storeVersion, switchSelected } from './selected-stage'

/** What a key press can ask for anywhere on the page. */
export type KeyAction =
  | 'play'
  | 'side'
  | 'previous-stage'
  | 'next-stage'
  | 'switch-stage'
  | 'stage-earlier'
  | 'stage-later'
  | 'store'
  | 'scope'
  | 'backing'
  | 'loop'
  | 'loop-from'
  | 'loop-to'
  | 'matched'
  | 'difference'
  | 'trial'
  | 'deliver'
  | 'projector'
  | 'open'
  | 'undo'
  | 'redo'
  | 'keys'

/** What keys act on. */
export interface KeyTarget {
  readonly app: App
  readonly screen: StoreApi<ScreenState>
  chooseTake(): void
}

export interface KeyRow {
  readonly action: KeyAction
  /**
   * Key presses that ask for it, as `pressName` (view/keys) spells them: "x", or "ctrl+z". S, M and R are left out: most
   * recording tools use them for solo, mute and record.
   */
  readonly keys: readonly string[]
  /** The keys as the sheet and the controls print them. */
  readonly printed: string
  readonly does: string
  run(target: KeyTarget): void
}

/** Every key, in the order in which the sheet shows them. */
export const keyTable: readonly KeyRow[] = [
  {
    action: 'play',
    keys: [' '],
    printed: 'Space',
    does: 'play, stop',
    run: ({ app }) => void app.listening.togglePlay(),
  },
  {
    action: 'side',
    keys: ['x'],
    printed: 'X',
    does: 'switch sides: without, with',
    run: ({ app }) => app.listening.switchSide(),
  },
  {
    action: 'previous-stage',
    keys: ['['],
    printed: '[',
    does: 'select the previous stage',
    run: ({ app }) => selectNeighbour(app, -1),
  },
  {
    action: 'next-stage',
    keys: [']'],
    printed: ']',
    does: 'select the next stage',
    run: ({ app }) => selectNeighbour(app, 1),
  },
  {
    action: 'switch-stage',
    keys: ['n'],
    printed: 'N',
    does: 'selected stage on, off',
    run: ({ app, screen }) => say(screen, switchSelected(app)),
  },
  {
    action: 'stage-earlier',
    keys: [','],
    printed: ',',
    does: 'move the selected stage earlier in the chain',
    run: ({ app, screen }) => say(screen, moveSelected(app, -1)),
  },
  {
    action: 'stage-later',
    keys: ['.'],
    printed: '.',
    does: 'move the selected stage later in the chain',
    run: ({ app, screen }) => say(screen, moveSelected(app, 1)),
  },
  {
    action: 'store',
    keys: ['k'],
    printed: 'K',
    does: 'store this version, as A and then as B',
    run: ({ app, screen }) => say(screen, storeVersion(app)),
  },
  {
    action: 'scope',
    keys: ['c'],
    printed: 'C',
    does: 'compare the whole chain, or this stage',
    run: ({ app }) => app.comparing.switchScope(),
  },
  {
    action: 'backing',
    keys: ['b'],
    printed: 'B',
    does: 'voice alone, or with the backing',
    run: ({ app: { take, listen, listening } }) => {
      if (take.getState().backing) listening.setBacking({ backingOn: !listen.getState().backingOn })
    },
  },
  {
    action: 'loop',
    keys: ['l'],
    printed: 'L',
    does: 'loop on, off',
    run: ({ app }) => app.listening.switchLoop(),
  },
  {
    action: 'loop-from',
    keys: ['f'],
    printed: 'F',
    does: 'start the loop here',
    run: ({ app }) => app.listening.setLoopEnd('from'),
  },
  {
    action: 'loop-to',
    keys: ['g'],
    printed: 'G',
    does: 'end the loop here',
    run: ({ app }) => app.listening.setLoopEnd('to'),
  },
  {
    action: 'matched',
    keys: ['e'],
    printed: 'E',
    does: 'matched (equal loudness) on, off',
    run: ({ app: { listen, listening } }) => listening.setMatched(!listen.getState().matched),
  },
  {
    action: 'difference',
    keys: ['h'],
    printed: 'H',
    does: 'hear the difference only, or a side again',
    run: ({ app: { listen, listening } }) =>
      listening.setDifference(listen.getState().heard !== 'difference'),
  },
  {
    action: 'trial',
    keys: ['t'],
    printed: 'T',
    does: 'blind trial of what is compared',
    run: ({ app, screen }) => openWithTake(app, screen, 'trial'),
  },
  {
    action: 'deliver',
    keys: ['d'],
    printed: 'D',
    does: 'deliver the file',
    run: ({ app, screen }) => openWithTake(app, screen, 'deliver'),
  },
  {
    action: 'projector',
    keys: ['p'],
    printed: 'P',
    does: 'projector view on, off',
    run: ({ screen }) => screen.setState(({ projector }) => ({ projector: !projector })),
  },
  {
    action: 'open',
    keys: ['o'],
    printed: 'O',
    does: 'open a take',
    run: ({ chooseTake }) => chooseTake(),
  },
  {
    action: 'undo',
    keys: ['ctrl+z', 'meta+z'],
    printed: 'Ctrl or Cmd Z',
    does: 'undo',
    run: ({ app }) => app.chain.getState().undo(),
  },
  {
    action: 'redo',
    keys: ['ctrl+shift+z', 'meta+shift+z', 'ctrl+y'],
    printed: 'Ctrl or Cmd Shift Z, Ctrl Y',
    does: 'redo',
    run: ({ app }) => app.chain.getState().redo(),
  },
  {
    action: 'keys',
    keys: ['?'],
    printed: '?',
    does: 'this sheet',
    run: ({ screen }) => screen.setState({ sheet: 'keys' }),
  },
]

/** The key of an action as it is printed beside a control and in its tooltip. */
export function printedKey(action: KeyAction): string {
  return keyTable.find((row) => row.action === action)?.printed ?? ''
}

function say(screen: StoreApi<ScreenState>, words: string | null): void {
  if (words !== null) screen.setState({ said: { words } })
}

function openWithTake({ take }: App, screen: StoreApi<ScreenState>, sheet: 'trial' | 'deliver'): void {
  if (take.getState().take) screen.setState({ sheet })
}
