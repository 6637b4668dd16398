import { type StageDoc, stageDefinitions } from '../../../core'
import { useStageColour } from '../../context/app-context'
import { StageGlyph } from '../../controls/stage-glyph'
import styles from './lane-labels.module.css'

interface GainReductionLabelProps {
  readonly stageId: string
  readonly kind: StageDoc['kind']
  readonly on: boolean
  /** Its number in the chain, from 1. */
  readonly number: number
  readonly figures: string
}

/** Which stage reduces, and by how much. */
export function GainReductionLabel({ stageId, kind, on, number, figures }: GainReductionLabelProps) {
  return (
    <>
      <span className={styles.glyph}>
        <StageGlyph colour={useStageColour(stageId)} index={number - 1} on={on} />
      </span>
      <span className={styles.name}>{stageDefinitions[kind].label}</span>
      <span className={styles.figures} data-figure>
        {figures}
      </span>
    </>
  )
}

/** Why a stage has no figures of its gain reduction. */
export function idleWords(on: boolean, heard: boolean, pending: string): string {
  if (!on) return 'off'
  return heard ? pending : 'after listening point'
}

/** What the lane of loudness shows, or why it shows nothing. */
export function LoudnessLabel({ figures }: { figures: string | null }) {
  return (
    <>
      <span className={styles.whole}>Loudness</span>
      <span className={styles.whole}>{figures ?? 'last 3 s, LUFS'}</span>
    </>
  )
}
