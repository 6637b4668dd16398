// `npm run soak -- 10`: that many minutes of listening while everything is changed at random, over and over.

import { ListeningEngine } from '../../src/audio/engine/listening-engine'
import type { ListenSettings } from '../../src/audio/engine/messages'
import { LIMITER_CEILING } from '../../src/audio/engine/monitor-limiter'
import { bypassed, type ChainDoc, chainOf } from '../../src/core'
import { demoTake, startingChain } from '../../src/demo'
import { moderateChains } from '../setup/moderate-chains'
import { mulberry32 } from '../setup/signals'

const QUANTUM_FRAMES = 128
const SEED = Number(process.env.SEED ?? 1)
const minutes = Number(process.argv[2] ?? 10)
/** Chance of a move in each quantum: eight a second. */
const MOVES = 0.02

const random = mulberry32(SEED)
const { vocal, backing } = demoTake()
const frames = vocal.channels[0]?.length ?? 0
const pool = [startingChain(), ...moderateChains(30, SEED)]
const ofPool = () => pool[Math.floor(random() * pool.length)] ?? startingChain()

let settings: ListenSettings = {
  bypassed: bypassed(startingChain()),
  processed: startingChain(),
  bypassedGainDb: 0,
  processedGainDb: 0,
  heard: 'processed',
  differenceStageId: null,
  monitorDb: 0,
  backing: { on: true, levelDb: 0, offsetFrames: 0 },
}
const engine = new ListeningEngine(vocal.channels, settings, vocal.sampleRate, 2)
engine.setBacking(backing.channels)

function listen(changes: Partial<ListenSettings>): void {
  settings = { ...settings, ...changes }
  engine.set(settings)
}

function compare(chain: ChainDoc): void {
  listen({ bypassed: bypassed(chain), processed: chain })
}

/** Everything that can be done while it plays. */
const moves: readonly (() => void)[] = [
  () => engine.play(Math.floor(random() * frames)),
  () => engine.stop(),
  () => {
    const from = Math.floor(random() * frames * 0.8)
    engine.setLoop(random() < 0.3 ? null : { from, to: from + 4800 + Math.floor(random() * frames * 0.2) })
  },
  () =>
    listen({
      heard: (['processed', 'bypassed', 'difference'] as const)[Math.floor(random() * 3)] ?? 'processed',
    }),
  // Louder than the screen allows, for the guard to have work.
  () =>
    listen({
      monitorDb: 18 - 36 * random(),
      processedGainDb: -12 * random(),
      bypassedGainDb: -12 * random(),
    }),
  () =>
    listen({
      backing: { on: random() < 0.5, levelDb: 12 - 24 * random(), offsetFrames: Math.floor(9600 * random()) },
    }),
  () => listen({ differenceStageId: settings.processed.stages[Math.floor(random() * 6)]?.id ?? null }),
  () => compare(ofPool()),
  // Two chains that have nothing in common.
  () => listen({ bypassed: ofPool(), processed: ofPool() }),
  () => {
    const { stages } = settings.processed
    const stage = ofPool().stages[0]
    if (stage && stages.length < 8) {
      compare(chainOf([...stages, { ...stage, id: `added ${Math.floor(random() * 1e6)}` }]))
    }
  },
  () => compare(chainOf(settings.processed.stages.slice(1))),
  () =>
    compare(
      chainOf(
        settings.processed.stages.map((stage) => (random() < 0.5 ? { ...stage, on: !stage.on } : stage)),
      ),
    ),
]

const output = [new Float32Array(QUANTUM_FRAMES), new Float32Array(QUANTUM_FRAMES)]
const gains = new Float32Array(64)
const quanta = Math.floor((minutes * 60 * vocal.sampleRate) / QUANTUM_FRAMES)
const heap: number[] = []
let moved = 0
let wrong = 0
let peak = 0
const start = performance.now()
engine.play(0)
for (let i = 0; i < quanta; i++) {
  if (random() < MOVES) {
    moves[Math.floor(random() * moves.length)]?.()
    moved++
  }
  if (!engine.running && random() < 0.01) engine.play(Math.floor(random() * frames))
  engine.process(output, QUANTUM_FRAMES, gains)
  for (const samples of output) {
    for (const sample of samples) {
      if (!Number.isFinite(sample)) wrong++
      peak = Math.max(peak, Math.abs(sample))
    }
  }
  if (i % Math.ceil(quanta / 10) === 0) {
    globalThis.gc?.()
    const { heapUsed, arrayBuffers } = process.memoryUsage()
    heap.push((heapUsed + arrayBuffers) / 2 ** 20)
  }
}
const seconds = (performance.now() - start) / 1000

console.log(
  `${minutes} min of listening, ${moved} random moves (seed ${SEED}), worked out in ${seconds.toFixed(0)} s`,
)
console.log(`not a number or infinite: ${wrong}`)
console.log(`highest peak: ${(20 * Math.log10(peak)).toFixed(3)} dBFS (guard at -1 dBFS)`)
console.log(`memory after each tenth: ${heap.map((megabytes) => megabytes.toFixed(1)).join(' ')} MB`)
const half = heap.slice(heap.length / 2)
const grown = Math.max(...half) - Math.min(...half)
if (wrong > 0 || peak > Math.fround(LIMITER_CEILING) || grown > 8) {
  console.log('FAILED')
  process.exitCode = 1
}
