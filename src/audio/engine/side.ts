import { type ChainDoc, type ChainHost, ChainProcessor, MAX_LOOKAHEAD_MS } from '../../core'
import { DelayLine, Ramp } from '../../core/primitives'

/** A chain warms up for this long before it is faded in: longer than any delay or filter needs to settle. */
const WARM_UP_MS = 60
const HANDOVER_MS = 15

/** A chain brought to a given delay. */
interface Unit {
  readonly chain: ChainProcessor
  /** Of chain and padding together. */
  readonly delayFrames: number
  readonly padding: readonly DelayLine[]
  readonly differencePadding: readonly DelayLine[]
}

type EngineHost = Pick<ChainHost, 'sampleRate' | 'channelCount' | 'differenceToo'>

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
  private readonly differenceScratch: readonly Float32Array[]
  private watchedId: string | null = null

  constructor(
    chain: ChainDoc,
    delayFrames: number,
    private readonly host: EngineHost,
    blockFrames: number,
  ) {
    this.unit = createUnit(chain, delayFrames, host)
    const block = () => new Float32Array(blockFrames)
    this.scratch = Array.from({ length: host.channelCount }, block)
    this.differenceScratch = Array.from({ length: host.differenceToo ? host.channelCount : 0 }, block)
  }

  /** Number of stages that {@link process} reports gains of. */
  get stageCount(): number {
    return (this.next ?? this.unit).chain.length
  }

  /** Goes to another chain, delayed to `delayFrames` in all. */
  set(chain: ChainDoc, delayFrames: number): void {
    const unit = this.next ?? this.unit
    if (delayFrames === unit.delayFrames && unit.chain.set(chain)) {
      this.queued = null
      return
    }
    if (this.next) this.queued = { chain, delayFrames }
    else this.prepare(chain, delayFrames)
  }

  /** Goes smoothly to putting out what this stage takes away, as in ChainProcessor. */
  watch(stageId: string | null): void {
    if (stageId === this.watchedId) return
    this.watchedId = stageId
    this.unit.chain.watch(stageId)
    this.next?.chain.watch(stageId)
  }

  /** Processes the first `frames` of every channel in place. Gains and what is removed as in ChainProcessor. */
  process(
    channels: readonly Float32Array[],
    frames: number,
    lowestGainDb?: Float32Array,
    difference?: readonly Float32Array[],
  ): void {
    if (this.next) {
      for (let c = 0; c < channels.length; c++) {
        const samples = channels[c]
        const copy = this.scratch[c]
        if (samples && copy) for (let n = 0; n < frames; n++) copy[n] = samples[n] ?? 0
      }
      run(this.next, this.scratch, frames, lowestGainDb, difference && this.differenceScratch)
      run(this.unit, channels, frames, undefined, difference)
      this.handOver(this.next, channels, frames, difference)
    } else {
      run(this.unit, channels, frames, lowestGainDb, difference)
    }
  }

  private prepare(chain: ChainDoc, delayFrames: number): void {
    this.next = createUnit(chain, delayFrames, this.host)
    this.next.chain.watch(this.watchedId)
    this.warmFramesLeft = Math.round((WARM_UP_MS * this.host.sampleRate) / 1000)
    this.fade.goTo(0, 0)
  }

  private handOver(
    next: Unit,
    channels: readonly Float32Array[],
    frames: number,
    difference?: readonly Float32Array[],
  ): void {
    if (this.warmFramesLeft > 0) {
      this.warmFramesLeft -= frames
      if (this.warmFramesLeft <= 0) this.fade.goTo(1, Math.round((HANDOVER_MS * this.host.sampleRate) / 1000))
      return
    }
    crossfade(channels, this.scratch, frames, this.fade)
    if (difference) crossfade(difference, this.differenceScratch, frames, this.fade)
    this.fade.pass(frames)
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
  const processor = new ChainProcessor(chain, { ...host, maxLookaheadMs: MAX_LOOKAHEAD_MS })
  const missing = Math.max(0, delayFrames - processor.latencyFrames)
  return {
    chain: processor,
    delayFrames,
    padding: delayLines(host.channelCount, missing),
    differencePadding: delayLines(host.differenceToo ? host.channelCount : 0, missing),
  }
}

function delayLines(count: number, frames: number): DelayLine[] {
  return Array.from({ length: count }, () => new DelayLine(frames))
}

function run(
  { chain, padding, differencePadding }: Unit,
  channels: readonly Float32Array[],
  frames: number,
  lowestGainDb?: Float32Array,
  difference?: readonly Float32Array[],
): void {
  chain.process(channels, frames, lowestGainDb, difference)
  pad(channels, padding, frames)
  if (difference) pad(difference, differencePadding, frames)
}

function pad(channels: readonly Float32Array[], lines: readonly DelayLine[], frames: number): void {
  for (let c = 0; c < channels.length; c++) {
    const samples = channels[c]
    if (samples) lines[c]?.process(samples, 0, frames)
  }
}

/** Blends `channels`, in place, towards what comes in, by the share that `fade` gives each frame. */
function crossfade(
  channels: readonly Float32Array[],
  incoming: readonly Float32Array[],
  frames: number,
  fade: Ramp,
): void {
  for (let c = 0; c < channels.length; c++) {
    const samples = channels[c]
    const next = incoming[c]
    if (!samples || !next) continue
    for (let n = 0; n < frames; n++) {
      const share = fade.at(n)
      const old = samples[n] ?? 0
      samples[n] = share === 1 ? (next[n] ?? 0) : old + share * ((next[n] ?? 0) - old)
    }
  }
}
