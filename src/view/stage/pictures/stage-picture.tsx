import type { ComponentType } from 'react'
import type { StagePicture as Picture, StageDoc, StagePictureKind } from '../../../core'
import { LevelChangePicture } from './level-change-picture'
import type { PictureProps } from './picture-props'
import { SibilancePicture } from './sibilance-picture'
import { StaticCurvePicture } from './static-curve-picture'
import { TransferCurvePicture } from './transfer-curve-picture'

/** Who draws which picture: a kind of picture without a component does not compile. */
const components: { readonly [Kind in StagePictureKind]: ComponentType<PictureProps<Kind>> } = {
  'static-curve': StaticCurvePicture,
  'transfer-curve': TransferCurvePicture,
  sibilance: SibilancePicture,
  'level-change': LevelChangePicture,
}

interface StagePictureProps<Kind extends StagePictureKind> {
  readonly picture: Extract<Picture, { kind: Kind }>
  readonly stage: StageDoc
  readonly index: number
}

/** The picture of a stage's settings. */
export function StagePicture<Kind extends StagePictureKind>({ picture, ...place }: StagePictureProps<Kind>) {
  const Component: ComponentType<PictureProps<Kind>> = components[picture.kind]
  return <Component picture={picture} {...place} />
}
