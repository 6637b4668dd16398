import type { StoreApi } from 'zustand/vanilla'
import type { App } from '../../session/app'
import { switchLoop } from '../listening/switch-loop'
import { switchScope } from '../listening/switch-scope'
import type { ScreenState } from '../screen-store'
import { loopFrom, loopTo } from '../take/loop-ends'
import type { KeyAction } from './key-actions'
import { keepVersion, moveAtHand, stepStage, switchAtHand } from './stage-keys'

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
      say(keepVersion(app))
      return
    case 'loop-from':
      setLoopEnd(app, loopFrom)
      return
    case 'loop-to':
      setLoopEnd(app, loopTo)
      return
    case 'deliver':
      if (take.getState().take) screen.setState({ sheet: 'deliver' })
      return
    case 'backing':
      if (take.getState().backing) listening.setBacking({ backingOn: !listen.getState().backingOn })
      return
    case 'loop':
      switchLoop(app, screen)
      return
    case 'scope':
      switchScope(app)
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

/** Sets one end of the loop where the take plays. */
function setLoopEnd(
  { listen, listening, take }: Pick<App, 'listen' | 'listening' | 'take'>,
  withEnd: typeof loopFrom,
): void {
  const { positionFrame, loop } = listen.getState()
  const { take: inApp } = take.getState()
  if (inApp) listening.setLoop(withEnd(positionFrame, loop, inApp.sound.sampleRate))
}
