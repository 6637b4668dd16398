import type { ComponentType } from 'react'
import { type LazyPart, lazyPart } from '../../../session/lazy-part'
import { FailedPart } from '../../lazy/failed-part'
import { LazyView } from '../../lazy/lazy-view'
import type { SpectrogramLaneProps } from './spectrogram-lane'

/** The lane of the spectrogram: nobody needs it before it is first opened. */
export const spectrogramLane: LazyPart<ComponentType<SpectrogramLaneProps>> = lazyPart(
  'The spectrogram',
  async () => (await import('./spectrogram-lane')).SpectrogramLane,
)

/** The spectrogram's lane, its code fetched when it is first opened. */
export function LazySpectrogramLane(props: SpectrogramLaneProps) {
  const room = <div style={{ height: props.height }} />
  return <LazyView part={spectrogramLane} props={props} failed={FailedPart} meanwhile={room} />
}
