import { DelayLine } from '../dsp/fades/delay-line'
import { compressorProcessor } from './compressor/processor'
import { deEsserProcessor } from './de-esser/processor'
import { equaliserProcessor } from './equaliser/processor'
import { gainProcessor } from './gain/processor'
import { type SettingsByKind, type StageDoc, type StageKind, stageDefinitions } from './index'
import type { Processor, ProcessorHost, ProcessorMaker } from './processor'
import { saturatorProcessor } from './saturator/processor'
import { stageLatencyFrames } from './stage-facts'

/** The table of processors: one line for each kind, or it does not compile. The page never runs them. */
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
 * What `stage` passes when it finds nothing to do, with the same delay: its input, or for a stage that filters all
 * the same, its input so filtered. Allocates.
 */
export function createIdleProcessor<Kind extends StageKind>(
  stage: StageDoc<Kind>,
  host: ProcessorHost,
): Processor<SettingsByKind[Kind]> {
  const { idleSettings } = stageDefinitions[stage.kind]
  if (!idleSettings)
    return new DelayProcessor(stageLatencyFrames(stage, host.sampleRate, host.maxLookaheadMs), host)
  const maker = makers[stage.kind]
  const idle = idleSettings(stage.settings)
  const processor = maker.createIdle?.(idle, host) ?? maker.create(idle, host)
  return {
    latencyFrames: processor.latencyFrames,
    set: (settings) => processor.set(idleSettings(settings)),
    process: (channels, frames) => processor.process(channels, frames),
    reset: () => processor.reset(),
  }
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
