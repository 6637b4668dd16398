import type { ComponentType } from 'react'
import type { StageDoc, StagePicture } from '../../core'
import { type LazyPart, lazyPart } from '../../session/lazy-part'
import { FailedPart } from '../lazy/failed-part'
import { LazyView } from '../lazy/lazy-view'

interface LazyStagePictureProps {
  readonly picture: StagePicture
  readonly stage: StageDoc
  readonly index: number
}

/** The pictures of stages: an equaliser, which has none, is what is seen first. */
export const stagePictures: LazyPart<ComponentType<LazyStagePictureProps>> = lazyPart(
  'The picture of the stage',
  async () => (await import('./pictures/stage-picture')).StagePicture,
)

/** The picture of a stage's settings, once it has been fetched. */
export function LazyStagePicture(props: LazyStagePictureProps) {
  return <LazyView part={stagePictures} props={props} failed={FailedPart} />
}
