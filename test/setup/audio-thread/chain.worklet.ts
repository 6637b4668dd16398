import { ChainProcessor, MAX_BLOCK_FRAMES } from '../../../src/core'
import { CHAIN_PROCESSOR, type ChainOptions } from './chain-options'

/** Runs its input through a chain on the audio thread: what is heard, without monitor or matching. */
class ChainOnThread extends AudioWorkletProcessor {
  private readonly chain: ChainProcessor

  constructor(options: { processorOptions: ChainOptions }) {
    super()
    const { chain, channelCount } = options.processorOptions
    this.chain = new ChainProcessor(chain, { sampleRate, channelCount })
  }

  process(inputs: Float32Array[][], outputs: Float32Array[][]): boolean {
    const input = inputs[0] ?? []
    const output = outputs[0] ?? []
    const frames = output[0]?.length ?? 0
    for (let c = 0; c < output.length; c++) {
      const source = input[c]
      // The input has no channels once its source has ended: what follows is silence, and the chain rings out.
      if (source) output[c]?.set(source)
      else output[c]?.fill(0)
    }
    for (let from = 0; from < frames; from += MAX_BLOCK_FRAMES) {
      const count = Math.min(MAX_BLOCK_FRAMES, frames - from)
      this.chain.process(count === frames ? output : output.map((samples) => samples.subarray(from)), count)
    }
    return true
  }
}

registerProcessor(CHAIN_PROCESSOR, ChainOnThread)
