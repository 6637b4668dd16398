import {
  type ChainDoc,
  chainLatencyFrames,
  frameCount,
  MAX_BLOCK_FRAMES,
  type Sound,
} from '../../../src/core'
import workletUrl from './chain.worklet.ts?worker&url'
import { CHAIN_PROCESSOR, type ChainOptions } from './chain-options'

/** Frames the browser hands over at a time: each call costs more than the work in it. Ignored where unknown. */
const RENDER_FRAMES = MAX_BLOCK_FRAMES

/** Part of the Web Audio API's context options that the DOM types do not know yet. */
interface RenderSize {
  readonly renderSizeHint: number
}

/**
 * Runs a take through a chain on the audio thread, at the take's own rate, in an OfflineAudioContext. As long as the take
 * and aligned with it.
 */
export async function renderOnThread(take: Sound, chain: ChainDoc): Promise<Sound> {
  const frames = frameCount(take)
  const channelCount = take.channels.length
  const { sampleRate } = take
  const latencyFrames = chainLatencyFrames(chain, sampleRate)
  const options: OfflineAudioContextOptions & RenderSize = {
    numberOfChannels: channelCount,
    length: frames + latencyFrames,
    sampleRate,
    renderSizeHint: RENDER_FRAMES,
  }
  const context = new OfflineAudioContext(options)
  await context.audioWorklet.addModule(workletUrl)
  const buffer = context.createBuffer(channelCount, frames, sampleRate)
  take.channels.forEach((samples, c) => {
    buffer.copyToChannel(new Float32Array(samples), c)
  })
  const processorOptions: ChainOptions = { chain, channelCount }
  // Settings travel in processorOptions: a message posted before an offline render may or may not arrive.
  const node = new AudioWorkletNode(context, CHAIN_PROCESSOR, {
    outputChannelCount: [channelCount],
    channelCount,
    channelCountMode: 'explicit',
    channelInterpretation: 'discrete',
    processorOptions,
  })
  const source = new AudioBufferSourceNode(context, { buffer })
  source.connect(node).connect(context.destination)
  source.start()
  const rendered = await context.startRendering()
  return {
    sampleRate,
    channels: take.channels.map((_, c) =>
      rendered.getChannelData(c).slice(latencyFrames, latencyFrames + frames),
    ),
  }
}
