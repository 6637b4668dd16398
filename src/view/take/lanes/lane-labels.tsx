import { type StageDoc, stageDefinitions } from '../../../core'
import { useStageColour } from '../../context/app-context'
import styles from './lane-labels.module.css'

interface WaveLabelProps {
  readonly sides: { readonly bypassed: string; readonly processed: string }
  /** The true peak of each side, in words. */
  readonly bypassedPeak: string
  readonly processedPeak: string
}

export function WaveLabel({ sides, bypassedPeak, processedPeak }: WaveLabelProps) {
  return (
    <>
      <span className={styles.name}>
        <strong>Wave</strong>
      </span>
      <span>{`${bypassedPeak} ${sides.bypassed}`}</span>
      <span>{`${processedPeak} ${sides.processed}`}</span>
    </>
  )
}

interface GainReductionLabelProps {
  readonly stageId: string
  readonly kind: StageDoc['kind']
  /** Its number in the chain, from 1. */
  readonly number: number
  readonly figures: string
}

export function GainReductionLabel({ stageId, kind, number, figures }: GainReductionLabelProps) {
  return (
    <>
      <span>
        <strong style={{ color: useStageColour(stageId) }}>{number}</strong> {stageDefinitions[kind].label}
      </span>
      <span>{figures}</span>
    </>
  )
}

/** Why a stage has no figures of its gain reduction. */
export function idleWords(on: boolean, heard: boolean, pending: string): string {
  if (!on) return 'off'
  return heard ? pending : 'after the listening point'
}

/** So that what stands above stays where it is. */
const KEEPS_ITS_LINE = '\u00a0'

export function LoudnessLabel({ figures }: { figures: string }) {
  return (
    <>
      <span>Short-term loudness</span>
      <span>{figures || KEEPS_ITS_LINE}</span>
    </>
  )
}
