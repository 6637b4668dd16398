import type { Page } from '@playwright/test'
import { bringOut } from './samples'

declare global {
  interface Window {
    /** Everything that reached the page's audio output since the last look, first channel. */
    capturedBlocks?: Float32Array<ArrayBuffer>[]
  }
}

/** Runs on the audio thread, so that nothing is lost however busy the page is. */
const RECORDER_MODULE = `
registerProcessor('recorder-of-the-test', class extends AudioWorkletProcessor {
  block = new Float32Array(4096)
  filled = 0
  process([[samples]]) {
    this.block.set(samples ?? new Float32Array(128), this.filled)
    this.filled += 128
    if (this.filled < this.block.length) return true
    this.port.postMessage(this.block)
    this.filled = 0
    return true
  }
})`

/**
 * Records what the page sends to its audio output, without the page knowing: its contexts' destination is a gain
 * that goes to the real destination and to a recorder. Call before the page is opened, in a context made with
 * `bypassCSP`: the page lets in no module that it did not bring.
 */
export async function captureOutput(page: Page): Promise<void> {
  await page.addInitScript((recorderModule) => {
    const blocks: Float32Array<ArrayBuffer>[] = []
    window.capturedBlocks = blocks
    const own = Object.getOwnPropertyDescriptor(BaseAudioContext.prototype, 'destination')
    const tees = new WeakMap<AudioContext, AudioNode>()
    const record = async (context: AudioContext, tee: AudioNode, destination: AudioNode) => {
      await context.audioWorklet.addModule(`data:text/javascript,${encodeURIComponent(recorderModule)}`)
      const recorder = new AudioWorkletNode(context, 'recorder-of-the-test')
      recorder.port.onmessage = ({ data }: MessageEvent<Float32Array<ArrayBuffer>>) => blocks.push(data)
      tee.connect(recorder).connect(destination)
    }
    Object.defineProperty(AudioContext.prototype, 'destination', {
      get(this: AudioContext) {
        const known = tees.get(this)
        if (known) return known
        const destination: AudioNode = own?.get?.call(this)
        const tee = this.createGain()
        tee.connect(destination)
        tees.set(this, tee)
        void record(this, tee, destination)
        return tee
      },
    })
  }, RECORDER_MODULE)
}

/** What was sent to the output since the last call. */
export async function takeCaptured(page: Page): Promise<Float32Array> {
  return bringOut(await page.evaluateHandle(() => window.capturedBlocks?.splice(0) ?? []))
}
