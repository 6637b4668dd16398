import { DelayLine } from '../dsp/fades/delay-line'
import { compressorProcessor } from './compressor/processor'
import { deEsserProcessor } from './de-esser/processor'
import { equaliserProcessor } from './equaliser/processor'
import { gainProcessor } from './gain/processor'
import type { SettingsByKind, StageDoc, StageKind } from './index'
import type { Processor, ProcessorHost, ProcessorMaker } from './processor'
import { saturatorProcessor } from './saturator/processor'

/** The table of what makes stages work: one line for each kind, or it does not compile. The page never runs them. */
const makers: { readonly [Kind in StageKind]: ProcessorMaker<SettingsByKind[Kind]> } = {
  equaliser: equaliserProcessor,
  compressor: compressorProcessor,
  'de-esser': deEsserProcessor,
  saturator: saturatorProcessor,
  gain: gainProcessor,
}

/** A processor for `stage`, whether it is switched on or not. Allocates. */
export function createProcessor<Kind extends StageKind>(
  stage: StageDoc<Kind>,
  host: ProcessorHost,
): Processor<SettingsByKind[Kind]> {
  return makers[stage.kind].create(stage.settings, host)
}

/**
 * What `stage` lets through when it finds nothing to do, with the same delay: its input, or for a stage that
 * turns the phase of everything, its input so turned. Allocates.
 */
export function createReference<Kind extends StageKind>(
  stage: StageDoc<Kind>,
  host: ProcessorHost,
): Processor<SettingsByKind[Kind]> {
  const { createReference: create } = makers[stage.kind]
  return create
    ? create(stage.settings, host)
    : new DelayProcessor(createProcessor(stage, host).latencyFrames, host)
}

class DelayProcessor implements Processor<object> {
  private readonly delays: readonly DelayLine[]

  constructor(
    readonly latencyFrames: number,
    { channelCount }: ProcessorHost,
  ) {
    this.delays = Array.from({ length: channelCount }, () => new DelayLine(latencyFrames))
  }

  set(): void {}

  process(channels: readonly Float32Array[], frames: number): void {
    for (let c = 0; c < channels.length; c++) {
      const samples = channels[c]
      if (samples) this.delays[c]?.process(samples, 0, frames)
    }
  }

  reset(): void {
    for (const delay of this.delays) delay.reset()
  }
}

/** Whether what a stage lets through when it finds nothing to do is more than its input delayed. */
export function hasOwnReference(kind: StageKind): boolean {
  return makers[kind].createReference !== undefined
}
