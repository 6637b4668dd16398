import type { StageDoc, StagePicture, StagePictureKind } from '../../../core'

/** What the component for one kind of picture is given. */
export interface PictureProps<Kind extends StagePictureKind> {
  readonly picture: Extract<StagePicture, { kind: Kind }>
  readonly stage: StageDoc
  /** Position of the stage in the chain, from 0. */
  readonly index: number
}
