import type { StageDoc } from '../stages'
import { frequency, plain, signed } from '../stages/number-format'
import { bandsOf, withBands } from '../stages/stage-items'
import type { ChainDoc } from './chain-doc'

/** A narrow boost of one band, moved to find by ear what sounds bad. */
export interface BandSweep {
  readonly stageId: string
  readonly bandIndex: number
  readonly frequencyHz: number
}

/** Boost of the band while it is swept, dB, and its Q. Common practice, no source. */
export const SWEEP_GAIN_DB = 10
export const SWEEP_Q = 6

/** What is heard of a band while it is swept, in place of its settings: "heard +10 dB at 1.35 kHz, Q 6". */
export function sweepWords({ frequencyHz }: BandSweep): string {
  return `heard ${signed(SWEEP_GAIN_DB, 0)} dB at ${frequency(frequencyHz)}, Q ${plain(SWEEP_Q, 0)}`
}

/** `chain` with a band as it is heard while it is swept: a narrow boost. The same chain where it has no such band. */
export function sweptChain(chain: ChainDoc, sweep: BandSweep): ChainDoc {
  return { ...chain, stages: chain.stages.map((stage) => swept(stage, sweep)) }
}

function swept(stage: StageDoc, { stageId, bandIndex, frequencyHz }: BandSweep): StageDoc {
  const bands = stage.id === stageId ? bandsOf(stage) : null
  if (!bands) return stage
  const sweptBands = bands.map((band, index) =>
    index === bandIndex
      ? { ...band, on: true, shape: 'bell' as const, gainDb: SWEEP_GAIN_DB, q: SWEEP_Q, frequencyHz }
      : band,
  )
  return { ...withBands(stage, sweptBands), on: true }
}
