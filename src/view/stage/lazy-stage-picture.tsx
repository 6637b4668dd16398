import type { ComponentType } from 'react'
import type { StageDoc, StagePicture } from '../../core'
import { type LazyPart, lazyPart } from '../../session/lazy-part'
import { useTake } from '../context/app-context'
import { FailedPart } from '../lazy/failed-part'
import { LazyView } from '../lazy/lazy-view'

interface LazyStagePictureProps {
  readonly picture: StagePicture
  readonly stage: StageDoc
  readonly index: number
}

/** The pictures of stages. They show what a take does there: nobody needs them before there is one. */
export const stagePictures: LazyPart<ComponentType<LazyStagePictureProps>> = lazyPart(
  'The picture of the stage',
  async () => (await import('./pictures/stage-picture')).StagePicture,
)

/** The picture of a stage's settings, once there is a take and it has been fetched. */
export function LazyStagePicture(props: LazyStagePictureProps) {
  const hasTake = useTake(({ take }) => take !== null)
  if (!hasTake && !stagePictures.loaded) return null
  return <LazyView part={stagePictures} props={props} failed={FailedPart} />
}
