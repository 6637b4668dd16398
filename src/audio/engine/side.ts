import { type ChainDoc, ChainProcessor, DelayLine, Ramp } from '../../core'

/** A chain warms up for this long before it is faded in: longer than any delay or filter needs to settle. */
const WARM_UP_MS = 60
const HANDOVER_MS = 15

/** A chain brought to a given delay. */
interface Unit {
  readonly chain: ChainProcessor
  readonly padding: readonly DelayLine[]
}

interface EngineHost {
  readonly sampleRate: number
  readonly channelCount: number
}

/**
 * One side of a comparison while it plays: a chain, delayed to a given total. Switches and settings move smoothly
 * inside the chain; other stages or another delay take a new chain, which runs along unheard until it is warm and
 * is then faded in. Replacing allocates: it happens when a message arrives, never while sound is processed.
 */
export class Side {
  private unit: Unit
  private next: Unit | null = null
  private queued: { chain: ChainDoc; delayFrames: number } | null = null
  private warmFramesLeft = 0
  private readonly fade = new Ramp(0)
  private readonly scratch: readonly Float32Array[]

  constructor(
    chain: ChainDoc,
    private delayFrames: number,
    private readonly host: EngineHost,
    blockFrames: number,
  ) {
    this.unit = createUnit(chain, delayFrames, host)
    this.scratch = Array.from({ length: host.channelCount }, () => new Float32Array(blockFrames))
  }

  /** Number of stages that {@link process} reports gains of. */
  get stageCount(): number {
    return (this.next ?? this.unit).chain.length
  }

  /** Whether `chain` can be gone to without a new chain of processors. */
  fits(chain: ChainDoc): boolean {
    return (this.next ?? this.unit).chain.fits(chain)
  }

  /** Goes to another chain, delayed to `delayFrames` in all. */
  set(chain: ChainDoc, delayFrames: number): void {
    const unit = this.next ?? this.unit
    if (delayFrames === this.delayFrames && unit.chain.set(chain)) {
      this.queued = null
      return
    }
    this.delayFrames = delayFrames
    if (this.next) this.queued = { chain, delayFrames }
    else this.prepare(chain, delayFrames)
  }

  /** Processes the first `frames` of every channel in place. Lowest gain of each stage as in ChainProcessor. */
  process(channels: readonly Float32Array[], frames: number, lowestGainDb?: Float32Array): void {
    if (this.next) {
      for (let c = 0; c < channels.length; c++) {
        const samples = channels[c]
        const copy = this.scratch[c]
        if (samples && copy) for (let n = 0; n < frames; n++) copy[n] = samples[n] ?? 0
      }
      run(this.next, this.scratch, frames, lowestGainDb)
      run(this.unit, channels, frames)
      this.handOver(this.next, channels, frames)
    } else {
      run(this.unit, channels, frames, lowestGainDb)
    }
  }

  private prepare(chain: ChainDoc, delayFrames: number): void {
    this.next = createUnit(chain, delayFrames, this.host)
    this.warmFramesLeft = Math.round((WARM_UP_MS * this.host.sampleRate) / 1000)
    this.fade.goTo(0, 0)
  }

  private handOver(next: Unit, channels: readonly Float32Array[], frames: number): void {
    if (this.warmFramesLeft > 0) {
      this.warmFramesLeft -= frames
      if (this.warmFramesLeft <= 0) this.fade.goTo(1, Math.round((HANDOVER_MS * this.host.sampleRate) / 1000))
      return
    }
    const moving = Math.min(frames, this.fade.left)
    const start = this.fade.now
    const step = this.fade.perFrame
    for (let c = 0; c < channels.length; c++) {
      const samples = channels[c]
      const incoming = this.scratch[c]
      if (!samples || !incoming) continue
      let share = start
      for (let n = 0; n < frames; n++) {
        share = n < moving ? share + step : 1
        const old = samples[n] ?? 0
        samples[n] = share === 1 ? (incoming[n] ?? 0) : old + share * ((incoming[n] ?? 0) - old)
      }
    }
    this.fade.advanceBy(moving)
    if (this.fade.left === 0) this.finish(next)
  }

  private finish(next: Unit): void {
    this.unit = next
    this.next = null
    if (!this.queued) return
    const { chain, delayFrames } = this.queued
    this.queued = null
    this.prepare(chain, delayFrames)
  }
}

function createUnit(chain: ChainDoc, delayFrames: number, host: EngineHost): Unit {
  const processor = new ChainProcessor(chain, { ...host, lookaheadReserveMs: LOOKAHEAD_RESERVE_MS })
  const missing = Math.max(0, delayFrames - processor.latencyFrames)
  return {
    chain: processor,
    padding: Array.from({ length: host.channelCount }, () => new DelayLine(missing)),
  }
}

function run(
  unit: Unit,
  channels: readonly Float32Array[],
  frames: number,
  lowestGainDb?: Float32Array,
): void {
  unit.chain.process(channels, frames, lowestGainDb)
  for (let c = 0; c < channels.length; c++) {
    const samples = channels[c]
    if (samples) unit.padding[c]?.process(samples, 0, frames)
  }
}

/** As far as any lookahead can be set, so that setting it while the sound runs moves nothing in time. */
export const LOOKAHEAD_RESERVE_MS = 10
