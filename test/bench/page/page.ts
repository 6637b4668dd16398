import { ebur128_integrated_mono, ebur128_true_peak_mono } from 'ebur128-wasm'
import {
  type ChainDoc,
  durationSeconds,
  frameCount,
  measure,
  renderChain,
  type Sound,
} from '../../../src/core'
import { createProcessor } from '../../../src/core/stages/processors'
import { demoTake, startingChain } from '../../../src/demo'
import { renderOnThread } from '../../setup/audio-thread/render-on-thread'
import { COMPRESSOR_CHAIN, DE_ESSER_CHAIN, FIVE_SECTION_CHAIN, GAIN_CHAIN, SATURATOR_CHAIN } from '../chains'
import type { LiveCost } from '../live-cost'
import { longTake } from '../long-take'
import { medianMs, medianPair } from '../timing'
import { cancelMs } from './cancelling'
import liveCostWorker from './live-cost.worker.ts?worker&url'
import {
  fiveBiquads,
  nativeCompressor,
  nativeDeEsser,
  nativeGain,
  nativeShaper,
  renderNative,
} from './native-nodes'
import type { SoakReport } from './soak'

/** One comparison made in the page: median times in ms; the reference of a whole chain is how long the sound lasts. */
export interface PageResult {
  readonly what: string
  readonly oursMs: number
  readonly referenceMs: number
}

declare global {
  interface Window {
    runBench?: () => Promise<PageResult[]>
    runLiveCost?: () => Promise<LiveCost>
    runCancels?: (times: number) => Promise<number[]>
    runSoak?: (minutes: number, seed: number) => Promise<SoakReport>
  }
}

/** The one stage of a chain, to be called directly on all of a take. */
function directly(take: Sound, { stages: [stage] }: ChainDoc): () => void {
  if (!stage) throw new Error('no stage to run')
  const processor = createProcessor(stage, {
    sampleRate: take.sampleRate,
    channelCount: 1,
    staticSettings: true,
  })
  const samples = new Float32Array(frameCount(take))
  return () => {
    samples.set(take.channels[0] ?? [])
    processor.process([samples], samples.length)
  }
}

window.runLiveCost = () =>
  new Promise((resolve, reject) => {
    const worker = new Worker(liveCostWorker, { type: 'module' })
    worker.onmessage = ({ data }: MessageEvent<LiveCost>) => {
      worker.terminate()
      resolve(data)
    }
    worker.onerror = ({ message }) => reject(new Error(message))
  })

window.runCancels = cancelMs

window.runSoak = async (minutes, seed) => (await import('./soak')).soak(minutes, seed)

window.runBench = async () => {
  // Long enough for what starting a context costs not to count.
  const take = longTake(2)
  const { vocal } = demoTake()
  const compare = async (
    what: string,
    ours: () => unknown,
    reference: () => unknown,
  ): Promise<PageResult> => {
    const [oursMs, referenceMs] = await medianPair(ours, reference)
    return { what, oursMs, referenceMs }
  }
  return [
    await compare(
      'five-section equaliser, called directly / five native biquads',
      directly(take, FIVE_SECTION_CHAIN),
      () => renderNative(take, fiveBiquads),
    ),
    await compare(
      'five-section equaliser, through the worklet / five native biquads',
      () => renderOnThread(take, FIVE_SECTION_CHAIN),
      () => renderNative(take, fiveBiquads),
    ),
    await compare(
      'compressor, called directly / the native compressor',
      directly(take, COMPRESSOR_CHAIN),
      () => renderNative(take, nativeCompressor),
    ),
    await compare(
      'de-esser, called directly / split by native biquads, one half through the native compressor',
      directly(take, DE_ESSER_CHAIN),
      () => renderNative(take, nativeDeEsser),
    ),
    await compare(
      'saturator, called directly / the native shaper, 4 times oversampled',
      directly(take, SATURATOR_CHAIN),
      () => renderNative(take, nativeShaper),
    ),
    await compare('gain, called directly / the native gain', directly(take, GAIN_CHAIN), () =>
      renderNative(take, nativeGain),
    ),
    await compare(
      'everything measured / ebur128-wasm, integrated and true peak',
      () => measure(take),
      () => {
        const samples = take.channels[0] ?? new Float32Array()
        ebur128_integrated_mono(take.sampleRate, samples)
        ebur128_true_peak_mono(take.sampleRate, samples)
      },
    ),
    {
      what: 'starting chain with traces on the demo, mono 48 kHz / its length',
      oursMs: await medianMs(() => renderChain(vocal, startingChain())),
      referenceMs: durationSeconds(vocal) * 1000,
    },
  ]
}
