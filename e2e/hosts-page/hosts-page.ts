import { Compute } from '../../src/compute/compute'
import { type ChainDoc, renderChain, type Sound } from '../../src/core'
import { renderOnThread } from '../../test/setup/audio-thread/render-on-thread'

/** Samples of one render, first channel by first channel, as plain numbers. */
export interface HostRenders {
  readonly offline: readonly number[][]
  readonly worker: readonly number[][]
  readonly page: readonly number[][]
}

declare global {
  interface Window {
    renderInHosts?: (channels: number[][], sampleRate: number, chain: ChainDoc) => Promise<HostRenders>
  }
}

const asNumbers = (sound: Sound | null) => (sound?.channels ?? []).map((samples) => Array.from(samples))

window.renderInHosts = async (channels, sampleRate, chain) => {
  const take: Sound = { sampleRate, channels: channels.map((samples) => Float32Array.from(samples)) }
  const worker = new Compute()
  await worker.setTake(take)
  return {
    offline: asNumbers(await renderOnThread(take, chain)),
    worker: asNumbers(await worker.render(chain, () => undefined, new AbortController().signal)),
    page: asNumbers(renderChain(take, chain).sound),
  }
}
