import type { FrameRange } from '../sound/frame-range'
import type { Sound } from '../sound/sound'
import { type StageDoc, stageDefinitions } from '../stages'
import type { Processor } from '../stages/processor'
import { createProcessor } from '../stages/processors'
import { contain } from './contain'
import { type SoundWithLeads, takeFrames } from './leads'
import { hopEnd, TRACE_HOP_FRAMES, TraceBuilder } from './trace'

/** One stage on the way, and its trace if that is wanted. */
interface Link {
  readonly stageId: string
  readonly processor: Pick<Processor<never>, 'process' | 'trace' | 'latencyFrames'>
  /** By how much what leaves this stage is behind the input, frames. */
  readonly behind: number
  readonly builder: TraceBuilder | undefined
}

const BLOCK_FRAMES = 16384

/**
 * Works out the gains of stages along a stretch of sound, block by block, from the first frame to as far as it is told
 * to go. Of the last stage that reduces gain only the gain is worked out, and stages behind it are left out.
 */
export class TraceRun {
  /** First hop, counted from the start of the sound, of every trace. */
  readonly firstHop: number
  private readonly links: readonly Link[]
  private readonly block: readonly Float32Array[]
  private readonly origin: number
  private nextFrame: number

  /**
   * @param sound with what stages before these put out around it
   * @param stages what `sound` runs through; those that are off let it pass
   * @param warmUpFrames how far ahead of the stretch it starts, for detectors to have settled there
   */
  constructor(
    private readonly sound: SoundWithLeads,
    stages: readonly StageDoc[],
    stretch: FrameRange,
    warmUpFrames = 0,
  ) {
    this.firstHop = Math.floor(stretch.from / TRACE_HOP_FRAMES)
    this.origin = this.firstHop * TRACE_HOP_FRAMES
    this.nextFrame = Math.max(-(sound.leadInFrames ?? 0), this.origin - Math.ceil(warmUpFrames))
    this.block = sound.channels.map(() => new Float32Array(BLOCK_FRAMES))
    const frames = Math.min(hopEnd(stretch.to), takeFrames(sound)) - this.origin
    this.links = linksOf(stages, sound, frames, this.nextFrame - this.origin)
  }

  /** Goes on until the traces are complete up to frame `to`: a step a block. */
  *goOn(to: number): Generator<null, void, void> {
    const end = hopEnd(to) + (this.links.at(-1)?.behind ?? 0)
    while (this.nextFrame < end) {
      this.pass(Math.min(BLOCK_FRAMES, end - this.nextFrame))
      yield null
    }
  }

  /** The traces as far as they have come, by stage id: dB a hop, from {@link firstHop} on. */
  *traces(): Generator<{ readonly stageId: string; readonly gainDb: Float32Array }, void, void> {
    for (const { stageId, builder } of this.links)
      if (builder) yield { stageId, gainDb: builder.trace.gainDb }
  }

  private pass(count: number): void {
    const { block, links } = this
    this.load(count)
    for (const link of links) {
      const { processor, builder } = link
      if (link === links.at(-1) && builder && processor.trace) processor.trace(block, count, builder)
      else {
        processor.process(block, count, builder)
        contain(block, count)
      }
    }
    this.nextFrame += count
  }

  /** The next `count` frames of the sound, and silence behind its end. */
  private load(count: number): void {
    const { sound, block, nextFrame } = this
    const from = nextFrame + (sound.leadInFrames ?? 0)
    block.forEach((samples, c) => {
      const there = sound.channels[c]?.subarray(from, from + count)
      samples.fill(0, there?.length ?? 0, count)
      if (there) samples.set(there)
    })
  }
}

/**
 * The stages that are on, up to the last that reduces gain.
 * @param frames length of the traces
 * @param startFrame the frame of the traces that is fed first
 */
function linksOf(
  stages: readonly StageDoc[],
  { sampleRate, channels }: Sound,
  frames: number,
  startFrame: number,
): Link[] {
  const on = stages.filter((stage) => stage.on)
  const last = on.findLastIndex(({ kind }) => stageDefinitions[kind].reducesGain)
  const host = { sampleRate, channelCount: channels.length, staticSettings: true }
  let behind = 0
  return on.slice(0, last + 1).map((stage) => {
    const processor = createProcessor(stage, host)
    behind += processor.latencyFrames
    const builder = stageDefinitions[stage.kind].reducesGain
      ? new TraceBuilder(frames, startFrame - behind)
      : undefined
    return { stageId: stage.id, processor, behind, builder }
  })
}
