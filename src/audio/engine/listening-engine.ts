import {
  chainLatencyFrames,
  chainOf,
  dbToGain,
  type FrameRange,
  MAX_BLOCK_FRAMES,
  MAX_LOOKAHEAD_MS,
} from '../../core'
import { Ramp } from '../../core/primitives'
import type { ListenSettings, Planar } from './messages'
import { MomentaryMeter } from './momentary-meter'
import { MonitorLimiter } from './monitor-limiter'
import { Side } from './side'
import { TrackReader } from './track-reader'

/** Linear, since both sides are correlated: an equal-power fade would bulge by 3 dB. */
const SWITCH_MS = 15
const LEVEL_MS = 40
/** The very first sound comes up slowly. */
const FIRST_FADE_MS = 800

/**
 * Everything between a take in memory and the monitor: reads the take, runs both sides of the comparison on it,
 * blends to the one that is heard, adds the backing, guards the output. Plain code without a host: the audio
 * thread owns one, and tests run it as it is.
 */
export class ListeningEngine {
  private readonly reader: TrackReader
  private readonly bypassed: Side
  private readonly processed: Side
  private readonly backingSide: Side
  private readonly limiter: MonitorLimiter
  private readonly meter: MomentaryMeter
  private readonly bypassedGain: Ramp
  private readonly processedGain: Ramp
  private readonly processedMix: Ramp
  private readonly differenceMix: Ramp
  /** How much of the difference is that of one stage, against that of both sides. */
  private readonly oneStageShare: Ramp
  private readonly backingGain: Ramp
  private readonly monitorGain = new Ramp(0)
  private readonly bypassedBlock: Float32Array[]
  private readonly processedBlock: Float32Array[]
  private readonly differenceBlock: Float32Array[]
  private readonly backingBlock: Float32Array[]
  private backing: Planar = []
  private settings: ListenSettings
  private delayFrames: number
  private heardBefore = false

  /**
   * @param take channels of the take, 1 or 2
   * @param outputChannels channels that `process` will be given; a mono take goes to all of them
   */
  constructor(
    private readonly take: Planar,
    settings: ListenSettings,
    private readonly sampleRate: number,
    outputChannels: number,
  ) {
    this.settings = settings
    this.reader = new TrackReader(take[0]?.length ?? 0, sampleRate)
    this.delayFrames = commonDelay(settings, sampleRate)
    const host = { sampleRate, channelCount: take.length }
    this.bypassed = new Side(settings.bypassed, this.delayFrames, host, MAX_BLOCK_FRAMES)
    this.processed = new Side(
      settings.processed,
      this.delayFrames,
      { ...host, differenceToo: true },
      MAX_BLOCK_FRAMES,
    )
    this.processed.watch(settings.differenceStageId)
    const backingHost = { sampleRate, channelCount: outputChannels }
    this.backingSide = new Side(chainOf([]), this.delayFrames, backingHost, MAX_BLOCK_FRAMES)
    this.limiter = new MonitorLimiter(sampleRate)
    this.meter = new MomentaryMeter(sampleRate, outputChannels, Math.min(1, take.length / outputChannels))
    this.bypassedGain = new Ramp(dbToGain(settings.bypassedGainDb))
    this.processedGain = new Ramp(dbToGain(settings.processedGainDb))
    this.processedMix = new Ramp(settings.heard === 'processed' ? 1 : 0)
    this.differenceMix = new Ramp(settings.heard === 'difference' ? 1 : 0)
    this.oneStageShare = new Ramp(settings.differenceStageId === null ? 0 : 1)
    this.backingGain = new Ramp(backingGainOf(settings))
    this.bypassedBlock = blocks(take.length)
    this.processedBlock = blocks(take.length)
    this.differenceBlock = blocks(take.length)
    this.backingBlock = blocks(outputChannels)
  }

  /** Whether the playhead is on the take. */
  get running(): boolean {
    return this.reader.running
  }

  /** The frame of the take that leaves the engine next. */
  get positionFrame(): number {
    return Math.max(0, this.reader.positionFrame - this.delayFrames)
  }

  /**
   * Momentary loudness of what was put out, LUFS. A mono take counts as one channel although all outputs play it, as
   * it does where it is measured by itself; a backing counts with it by the mean of all outputs.
   */
  get momentaryLufs(): number {
    return this.meter.lufs
  }

  /** Number of stages whose gain is reported. */
  get stageCount(): number {
    return this.processed.stageCount
  }

  /** Goes smoothly to other settings. May allocate, when stages come or go. */
  set(settings: ListenSettings): void {
    this.delayFrames = commonDelay(settings, this.sampleRate)
    this.settings = settings
    this.bypassed.set(settings.bypassed, this.delayFrames)
    this.processed.set(settings.processed, this.delayFrames)
    this.processed.watch(settings.differenceStageId)
    this.backingSide.set(chainOf([]), this.delayFrames)
    const switchFrames = this.framesOf(SWITCH_MS)
    const levelFrames = this.framesOf(LEVEL_MS)
    this.bypassedGain.goTo(dbToGain(settings.bypassedGainDb), switchFrames)
    this.processedGain.goTo(dbToGain(settings.processedGainDb), switchFrames)
    if (settings.heard !== 'difference')
      this.processedMix.goTo(settings.heard === 'processed' ? 1 : 0, switchFrames)
    this.differenceMix.goTo(settings.heard === 'difference' ? 1 : 0, switchFrames)
    this.oneStageShare.goTo(settings.differenceStageId === null ? 0 : 1, switchFrames)
    this.backingGain.goTo(backingGainOf(settings), levelFrames)
    if (this.heardBefore) this.monitorGain.goTo(dbToGain(settings.monitorDb), levelFrames)
  }

  /** Replaces the backing; an empty list takes it away. */
  setBacking(channels: Planar): void {
    this.backing = channels
  }

  /** Plays from a frame of the take on. The first time, the monitor comes up from silence. */
  play(fromFrame: number): void {
    this.reader.goTo(fromFrame)
    if (this.heardBefore) return
    this.heardBefore = true
    this.monitorGain.goTo(dbToGain(this.settings.monitorDb), this.framesOf(FIRST_FADE_MS))
  }

  /** Fades out and stands still. */
  stop(): void {
    this.reader.stop()
  }

  /** Repeats a stretch of the take; null to play on. */
  setLoop(loop: FrameRange | null): void {
    this.reader.setLoop(loop)
  }

  /**
   * Overwrites the first `frames` of every output channel.
   * @param lowestGainDb receives the lowest gain of each stage, as ChainProcessor.process does
   */
  process(output: readonly Float32Array[], frames: number, lowestGainDb?: Float32Array): void {
    let done = 0
    while (done < frames) {
      const count = this.reader.readable(Math.min(MAX_BLOCK_FRAMES, frames - done))
      this.reader.read({ channels: this.take, offsetFrames: 0 }, this.bypassedBlock, count)
      const { offsetFrames } = this.settings.backing
      this.reader.read({ channels: this.backing, offsetFrames }, this.backingBlock, count)
      this.reader.advance(count)
      for (let c = 0; c < this.take.length; c++) {
        const source = this.bypassedBlock[c]
        const copy = this.processedBlock[c]
        if (source && copy) copy.set(source)
      }
      this.bypassed.process(this.bypassedBlock, count)
      this.processed.process(this.processedBlock, count, lowestGainDb, this.differenceBlock)
      this.backingSide.process(this.backingBlock, count)
      this.mix(output, done, count)
      done += count
    }
    this.limiter.process(output, frames)
    this.meter.process(output, frames)
  }

  private mix(output: readonly Float32Array[], from: number, count: number): void {
    for (let c = 0; c < output.length; c++) {
      const target = output[c]
      const bypassed = this.bypassedBlock[Math.min(c, this.take.length - 1)]
      const processed = this.processedBlock[Math.min(c, this.take.length - 1)]
      const ofStage = this.differenceBlock[Math.min(c, this.take.length - 1)]
      const backing = this.backingBlock[c]
      if (!target || !bypassed || !processed || !ofStage || !backing) continue
      for (let n = 0; n < count; n++) {
        const a = bypassed[n] ?? 0
        const b = processed[n] ?? 0
        const matchedA = a * this.bypassedGain.at(n)
        const matchedB = b * this.processedGain.at(n)
        const compared = matchedA + this.processedMix.at(n) * (matchedB - matchedA)
        const ofBoth = a - b
        const difference = ofBoth + this.oneStageShare.at(n) * ((ofStage[n] ?? 0) - ofBoth)
        const heard = compared + this.differenceMix.at(n) * (difference - compared)
        target[from + n] = this.monitorGain.at(n) * (heard + this.backingGain.at(n) * (backing[n] ?? 0))
      }
    }
    this.bypassedGain.pass(count)
    this.processedGain.pass(count)
    this.processedMix.pass(count)
    this.differenceMix.pass(count)
    this.oneStageShare.pass(count)
    this.backingGain.pass(count)
    this.monitorGain.pass(count)
  }

  private framesOf(milliseconds: number): number {
    return Math.round((milliseconds * this.sampleRate) / 1000)
  }
}

/** Delay of both sides, frames: with the longest lookahead in reserve, so that setting it moves nothing in time. */
function commonDelay(settings: ListenSettings, sampleRate: number): number {
  return Math.max(
    chainLatencyFrames(settings.bypassed, sampleRate, MAX_LOOKAHEAD_MS),
    chainLatencyFrames(settings.processed, sampleRate, MAX_LOOKAHEAD_MS),
  )
}

function backingGainOf({ backing }: ListenSettings): number {
  return backing.on ? dbToGain(backing.levelDb) : 0
}

function blocks(channelCount: number): Float32Array[] {
  return Array.from({ length: channelCount }, () => new Float32Array(MAX_BLOCK_FRAMES))
}
