import type { StoreApi } from 'zustand/vanilla'
import type { Bench } from '../../state/bench'
import { switchLoop } from '../listening/switch-loop'
import { switchScope } from '../listening/switch-scope'
import type { ScreenState } from '../screen-store'
import type { KeyAction } from './key-actions'

/** Carries out what a key asked for. */
export function runKeyAction(
  action: KeyAction,
  bench: Bench,
  screen: StoreApi<ScreenState>,
  chooseTake: () => void,
): void {
  const { chain, listen, listening, take } = bench
  switch (action) {
    case 'play':
      void listening.togglePlay()
      return
    case 'side':
      listening.switchSide()
      return
    case 'previous-stage':
      stepStage(bench, -1)
      return
    case 'next-stage':
      stepStage(bench, 1)
      return
    case 'backing':
      if (take.getState().backing) listening.setBacking({ backingOn: !listen.getState().backingOn })
      return
    case 'loop':
      switchLoop(bench, screen)
      return
    case 'scope':
      switchScope(bench)
      return
    case 'removed':
      listening.setRemoved(listen.getState().heard !== 'removed')
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

function stepStage({ chain }: Bench, by: number): void {
  const {
    chain: { stages },
    selectedId,
    select,
  } = chain.getState()
  const next = stages[stages.findIndex(({ id }) => id === selectedId) + by]
  if (next) select(next.id)
}
