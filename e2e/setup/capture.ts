import type { Page } from '@playwright/test'

declare global {
  interface Window {
    /** Everything that reached the page's audio output since the last look, first channel. */
    capturedBlocks?: Float32Array[]
  }
}

/**
 * Records what the page sends to its audio output, without the page knowing: its contexts' destination is a gain
 * that goes to the real destination and to a recorder. Call before the page is opened.
 */
export async function captureOutput(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const blocks: Float32Array[] = []
    window.capturedBlocks = blocks
    const own = Object.getOwnPropertyDescriptor(BaseAudioContext.prototype, 'destination')
    const tees = new WeakMap<AudioContext, AudioNode>()
    Object.defineProperty(AudioContext.prototype, 'destination', {
      get(this: AudioContext) {
        const known = tees.get(this)
        if (known) return known
        const destination: AudioNode = own?.get?.call(this)
        const tee = this.createGain()
        const recorder = this.createScriptProcessor(4096, 2, 2)
        recorder.onaudioprocess = ({ inputBuffer }) => {
          blocks.push(inputBuffer.getChannelData(0).slice())
        }
        tee.connect(destination)
        tee.connect(recorder)
        recorder.connect(destination)
        tees.set(this, tee)
        return tee
      },
    })
  })
}

/** What was sent to the output since the last call. */
export async function takeCaptured(page: Page): Promise<Float32Array> {
  const samples = await page.evaluate(() => {
    const blocks = window.capturedBlocks?.splice(0) ?? []
    return blocks.flatMap((block) => Array.from(block))
  })
  return Float32Array.from(samples)
}
