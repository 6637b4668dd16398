import { DelayLine } from '../dsp/delay-line'
import { type SettingsByKind, type StageDoc, type StageKind, stageDefinitions } from './index'
import type { Processor, ProcessorHost } from './stage-definition'

/** A processor for `stage`, whether it is switched on or not. Allocates. */
export function createProcessor<Kind extends StageKind>(
  stage: StageDoc<Kind>,
  host: ProcessorHost,
): Processor<SettingsByKind[Kind]> {
  return stageDefinitions[stage.kind].createProcessor(stage.settings, host)
}

/**
 * What `stage` lets through when it finds nothing to do, with the same delay: its input, or for a stage that
 * turns the phase of everything, its input so turned. Allocates.
 */
export function createReference<Kind extends StageKind>(
  stage: StageDoc<Kind>,
  host: ProcessorHost,
): Processor<SettingsByKind[Kind]> {
  const { createReference: create } = stageDefinitions[stage.kind]
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
