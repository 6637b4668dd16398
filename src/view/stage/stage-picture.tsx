import type { StageDoc } from '../../core'
import { SaturationPicture } from './saturation-picture'
import { SibilancePicture } from './sibilance-picture'
import { StaticCurvePicture } from './static-curve-picture'

/** Whether a stage has a picture of its own. */
export function hasPicture({ kind }: StageDoc): boolean {
  return kind !== 'equaliser' && kind !== 'gain'
}

/** What a kind of stage is best seen by. Equalisers have the curve for it, and gain has nothing to show. */
export function StagePicture({ stage, index }: { stage: StageDoc; index: number }) {
  switch (stage.kind) {
    case 'compressor':
      return <StaticCurvePicture curve={stage.settings} stageId={stage.id} index={index} on={stage.on} />
    case 'de-esser':
      return <SibilancePicture settings={stage.settings} stageId={stage.id} index={index} on={stage.on} />
    case 'saturator':
      return <SaturationPicture settings={stage.settings} stageId={stage.id} />
    case 'equaliser':
    case 'gain':
      return null
  }
}
