import { ListeningEngine } from '../../src/audio/engine/listening-engine'
import type { ListenSettings } from '../../src/audio/engine/messages'
import { type ChainDoc, chainOf } from '../../src/core'

/** Frames the audio thread is asked for at a time. */
const QUANTUM_FRAMES = 128

/** Listening to `chain` against its bypass, unmatched, monitor at full level, no backing. */
export function listenTo(chain: ChainDoc, changes: Partial<ListenSettings> = {}): ListenSettings {
  return {
    bypassed: chainOf(chain.stages.map((stage) => ({ ...stage, on: false }))),
    processed: chain,
    bypassedGainDb: 0,
    processedGainDb: 0,
    heard: 'processed',
    differenceStageId: null,
    monitorDb: 0,
    backing: { on: false, levelDb: 0, offsetFrames: 0 },
    ...changes,
  }
}

/** What an engine puts out on its first channel over `frames`, with `onBlock` called before each block. */
export function heard(
  engine: ListeningEngine,
  frames: number,
  onBlock: (frame: number) => void = () => undefined,
  blockFrames = QUANTUM_FRAMES,
): Float32Array {
  const output = new Float32Array(frames)
  const block = [new Float32Array(blockFrames), new Float32Array(blockFrames)]
  for (let from = 0; from < frames; from += blockFrames) {
    onBlock(from)
    const count = Math.min(blockFrames, frames - from)
    engine.process(block, count)
    output.set((block[0] ?? new Float32Array()).subarray(0, count), from)
  }
  return output
}

/** An engine whose first slow fade is over: it has played a second of its take and been stopped. */
export function warmEngine(
  take: readonly Float32Array[],
  settings: ListenSettings,
  sampleRate: number,
): ListeningEngine {
  const engine = new ListeningEngine(take, settings, sampleRate, 2)
  engine.play(0)
  heard(engine, sampleRate)
  engine.stop()
  heard(engine, sampleRate / 10)
  return engine
}

/** The largest difference between neighbouring samples from frame `from` on. */
export function largestStep(samples: Float32Array, from = 0, to = samples.length): number {
  let largest = 0
  for (let n = Math.max(1, from); n < to; n++) {
    largest = Math.max(largest, Math.abs((samples[n] ?? 0) - (samples[n - 1] ?? 0)))
  }
  return largest
}
