import { numberedStage, type StageDoc, stageDefinitions } from '../../../core'
import styles from './card-figures.module.css'
import { CardPicture } from './card-picture'
import { StageLoudness } from './stage-loudness'
import { StageNow } from './stage-now'

export interface CardFiguresProps {
  readonly stage: StageDoc
  /** Position in the chain, from 0. */
  readonly index: number
  readonly compact: boolean
  /** Whether the figures that are known are those of this stage. */
  readonly measured: boolean
}

/** What a card shows of its stage besides words: its picture, its gain reduction, and the loudness behind it. */
export function CardFigures({ stage, index, compact, measured }: CardFiguresProps) {
  return (
    <>
      {!compact && (
        <span className={styles.picture}>
          <CardPicture stage={stage} index={index} />
        </span>
      )}
      {stageDefinitions[stage.kind].reducesGain && (
        <StageNow
          stageId={stage.id}
          index={index}
          name={numberedStage(index, stage.kind)}
          measured={measured}
        />
      )}
      {measured && <StageLoudness stageId={stage.id} />}
    </>
  )
}
