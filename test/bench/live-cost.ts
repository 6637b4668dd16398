import { ListeningEngine } from '../../src/audio/engine/listening-engine'
import { demoTake, startingChain } from '../../src/demo'
import { listenTo } from '../setup/engine'

/** Frames the audio thread is asked for at a time. */
const QUANTUM_FRAMES = 128
const WARM_UP_SECONDS = 4
const SECONDS = 20

export interface LiveCost {
  /** Share of the time there is for a quantum, median and 99th percentile. */
  readonly median: number
  readonly percentile99: number
}

/**
 * What listening costs: the starting chain, both sides at once, stereo at 48 kHz, the engine called for 128 frames
 * at a time as the audio thread calls it, each call timed and held against the 2.67 ms it plays for. It is run in a
 * worker of the browser, since the audio thread, for which the same browser compiles the same code, has no clock.
 */
export function liveCost(): LiveCost {
  const { vocal, backing } = demoTake()
  const { sampleRate } = vocal
  const [samples = new Float32Array()] = vocal.channels
  const settings = listenTo(startingChain(), { backing: { on: true, levelDb: 0, offsetFrames: 0 } })
  const engine = new ListeningEngine([samples, samples.slice()], settings, sampleRate, 2)
  engine.setBacking(backing.channels)
  engine.play(0)
  const output = [new Float32Array(QUANTUM_FRAMES), new Float32Array(QUANTUM_FRAMES)]
  const gains = new Float32Array(64)
  const quanta = (seconds: number) => Math.floor((seconds * sampleRate) / QUANTUM_FRAMES)
  for (let i = 0; i < quanta(WARM_UP_SECONDS); i++) engine.process(output, QUANTUM_FRAMES, gains)
  const times = Float64Array.from({ length: quanta(SECONDS) }, () => {
    const start = performance.now()
    engine.process(output, QUANTUM_FRAMES, gains)
    return performance.now() - start
  }).sort()
  const share = (at: number) =>
    (times[Math.floor(at * times.length)] ?? Number.NaN) / ((QUANTUM_FRAMES * 1000) / sampleRate)
  return { median: share(0.5), percentile99: share(0.99) }
}
