import type { StoreApi } from 'zustand/vanilla'
import type { App } from '../../session/app'
import type { ScreenState } from '../screen-store'
import type { KeyAction } from './key-actions'
import { moveAtHand, stepStage, storeVersion, switchAtHand } from './stage-keys'

/** Carries out what a key asked for. */
export function runKeyAction(
  action: KeyAction,
  app: App,
  screen: StoreApi<ScreenState>,
  chooseTake: () => void,
): void {
  const { chain, listen, listening, take } = app
  const say = (words: string | null) => words !== null && screen.setState({ said: { words } })
  switch (action) {
    case 'play':
      void listening.togglePlay()
      return
    case 'side':
      listening.switchSide()
      return
    case 'previous-stage':
      stepStage(app, -1)
      return
    case 'next-stage':
      stepStage(app, 1)
      return
    case 'switch-stage':
      say(switchAtHand(app))
      return
    case 'stage-earlier':
      say(moveAtHand(app, -1))
      return
    case 'stage-later':
      say(moveAtHand(app, 1))
      return
    case 'keep':
      say(storeVersion(app))
      return
    case 'loop-from':
      listening.setLoopEnd('from')
      return
    case 'loop-to':
      listening.setLoopEnd('to')
      return
    case 'deliver':
      if (take.getState().take) screen.setState({ sheet: 'deliver' })
      return
    case 'backing':
      if (take.getState().backing) listening.setBacking({ backingOn: !listen.getState().backingOn })
      return
    case 'loop':
      listening.switchLoop()
      return
    case 'scope':
      app.comparing.switchScope()
      return
    case 'difference':
      listening.setDifference(listen.getState().heard !== 'difference')
      return
    case 'matched':
      listening.setMatched(!listen.getState().matched)
      return
    case 'trial':
      if (take.getState().take) screen.setState({ sheet: 'trial' })
      return
    case 'projector':
      screen.setState(({ projector }) => ({ projector: !projector }))
      return
    case 'open':
      chooseTake()
      return
    case 'undo':
      chain.getState().undo()
      return
    case 'redo':
      chain.getState().redo()
      return
    case 'keys':
      screen.setState({ sheet: 'keys' })
      return
  }
}
