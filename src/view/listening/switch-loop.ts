import type { StoreApi } from 'zustand/vanilla'
import { frameCount } from '../../core'
import type { App } from '../../session/app'
import type { ScreenState } from '../screen-store'

/** Switches looping off and remembers the loop, or on again: the last loop, else the whole take. */
export function switchLoop(
  { listen, listening, take }: Pick<App, 'listen' | 'listening' | 'take'>,
  screen: StoreApi<ScreenState>,
): void {
  const { loop } = listen.getState()
  if (loop) {
    screen.setState({ lastLoop: loop })
    listening.setLoop(null)
    return
  }
  const sound = take.getState().take?.sound
  if (!sound) return
  const frames = frameCount(sound)
  const { lastLoop } = screen.getState()
  // The last loop may be one of a longer take.
  listening.setLoop(lastLoop && lastLoop.to <= frames ? lastLoop : { from: 0, to: frames })
}
