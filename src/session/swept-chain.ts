import { type ChainDoc, frequency, plain, type StageDoc, signed } from '../core'

/** A band held up narrowly at one frequency, to find by ear what sounds bad there. */
export interface Sweep {
  readonly stageId: string
  readonly bandIndex: number
  readonly frequencyHz: number
}

/** How far the band is lifted, dB, and how narrowly. Common practice, no source. */
export const SWEEP_GAIN_DB = 10
const SWEEP_Q = 6

/** What is heard of a band while it is swept, in place of its settings: "heard +10 dB at 1.35 kHz, Q 6". */
export function sweepWords({ frequencyHz }: Sweep): string {
  return `heard ${signed(SWEEP_GAIN_DB, 0)} dB at ${frequency(frequencyHz)}, Q ${plain(SWEEP_Q, 0)}`
}

/** `chain` with a band as it is heard while it is swept: a narrow lift. The same chain where it has no such band. */
export function sweptChain(chain: ChainDoc, sweep: Sweep): ChainDoc {
  return { ...chain, stages: chain.stages.map((stage) => swept(stage, sweep)) }
}

function swept(stage: StageDoc, { stageId, bandIndex, frequencyHz }: Sweep): StageDoc {
  if (stage.id !== stageId || stage.kind !== 'equaliser') return stage
  const bands = stage.settings.bands.map((band, index) =>
    index === bandIndex
      ? { ...band, on: true, shape: 'bell' as const, gainDb: SWEEP_GAIN_DB, q: SWEEP_Q, frequencyHz }
      : band,
  )
  return { ...stage, on: true, settings: { ...stage.settings, bands } }
}
