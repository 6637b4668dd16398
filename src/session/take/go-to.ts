import { frameCount } from '../../core'
import type { App } from '../app'

type Parts = Pick<App, 'take' | 'view'> & { readonly listening: Pick<App['listening'], 'seek'> }

/** Goes to a frame of the take, and brings it into view where it is not seen: at the same zoom, in the middle. */
export function goToFrame({ take, view, listening }: Parts, frame: number): void {
  const sound = take.getState().take?.sound
  if (!sound) return
  listening.seek(frame)
  const { seen } = view.getState()
  if (!seen || (frame >= seen.from && frame < seen.to)) return
  const length = seen.to - seen.from
  const from = Math.min(Math.max(0, frame - length / 2), Math.max(0, frameCount(sound) - length))
  view.setState({ seen: { from, to: from + length } })
}

/** Goes to where the take is clipped first. False where it isn't. */
export function goToFirstClip(app: Parts): boolean {
  const first = app.take.getState().take?.marks?.clipped[0]
  if (first) goToFrame(app, first.from)
  return first !== undefined
}
