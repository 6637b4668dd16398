import { expect, type Page } from '@playwright/test'
import { bringOut } from './samples'

/** Sound whose time passes only when a test says so. */
interface SteppedOutput {
  /** Lets so much time pass. */
  pass(seconds: number): Promise<void>
  /** Lets so much time pass and returns what reached the output since it was last asked, first channel, in blocks. */
  advance(seconds: number): Promise<Float32Array<ArrayBuffer>[]>
}

declare global {
  interface Window {
    /** The page's audio output, once it plays. */
    steppedOutput?: SteppedOutput
  }
}

/** Frames the audio thread works out at a time: time passes in such steps. */
const QUANTUM = 128

/** Keeps what it hears, and hands it over when asked to; asked for nothing, it answers that it has come so far. */
const RECORDER_MODULE = `
registerProcessor('recorder-of-the-test', class extends AudioWorkletProcessor {
  blocks = []
  constructor() {
    super()
    this.port.onmessage = ({ data: take }) => this.port.postMessage(take ? this.blocks.splice(0) : [])
  }
  process([[samples]]) {
    this.blocks.push(samples ? samples.slice() : new Float32Array(${QUANTUM}))
    return true
  }
})`

/**
 * Gives the page an audio output whose time passes only in `advance`, as fast as the machine works it out: an
 * OfflineAudioContext that looks like one that plays. The page, its messages and its audio thread are the real ones;
 * the result does not depend on how busy the machine is. Call before the page is opened, in a context made with
 * `bypassCSP`: the page lets in no module that it did not bring.
 * @param seconds how long it can be played in all
 */
export async function stepOutput(page: Page, seconds: number): Promise<void> {
  await page.addInitScript(
    ({ seconds, recorderModule, quantum }) => {
      class SteppedContext extends OfflineAudioContext implements SteppedOutput {
        private readonly tee: GainNode
        private readonly recorder: Promise<AudioWorkletNode>
        private started = false
        private frame = 0

        constructor({ sampleRate = 48_000 }: AudioContextOptions = {}) {
          super(2, seconds * sampleRate, sampleRate)
          this.tee = this.createGain()
          this.recorder = this.record()
          window.steppedOutput = this
        }

        override get state(): AudioContextState {
          return 'running'
        }

        // The clock that the page sees goes on: one that stands still has stopped.
        override get currentTime(): number {
          return performance.now() / 1000
        }

        // From this the page works out where the sound is that reaches the ear: here, the very frame.
        get baseLatency(): number {
          return 0
        }

        override get destination(): AudioDestinationNode {
          return Object.assign(this.tee, { maxChannelCount: 2 })
        }

        override async resume(): Promise<void> {}

        async close(): Promise<void> {}

        async pass(time: number): Promise<void> {
          // What the page has sent before arrives before this does.
          await this.ask(false)
          this.frame += Math.max(1, Math.round((time * this.sampleRate) / quantum)) * quantum
          const there = super.suspend(this.frame / this.sampleRate)
          if (this.started) void super.resume()
          else void super.startRendering()
          this.started = true
          await there
        }

        async advance(time: number): Promise<Float32Array<ArrayBuffer>[]> {
          await this.pass(time)
          return this.ask(true)
        }

        private async record(): Promise<AudioWorkletNode> {
          const url = `data:text/javascript,${encodeURIComponent(recorderModule)}`
          await this.audioWorklet.addModule(url)
          const recorder = new AudioWorkletNode(this, 'recorder-of-the-test')
          this.tee.connect(recorder).connect(super.destination)
          return recorder
        }

        /** Waits for the recorder's answer: what it has heard since it was last asked to hand it over, or nothing. */
        private async ask(take: boolean): Promise<Float32Array<ArrayBuffer>[]> {
          const { port } = await this.recorder
          return new Promise((resolve) => {
            port.onmessage = ({ data }) => resolve(data)
            port.postMessage(take)
          })
        }
      }
      Reflect.set(window, 'AudioContext', SteppedContext)
    },
    { seconds, recorderModule: RECORDER_MODULE, quantum: QUANTUM },
  )
}

/** Lets the page play for so long and returns what reached its output meanwhile. */
export async function advance(page: Page, seconds: number): Promise<Float32Array> {
  return bringOut(
    await page.evaluateHandle(async (time) => {
      if (!window.steppedOutput) throw new Error('nothing was played')
      return window.steppedOutput.advance(time)
    }, seconds),
  )
}

/** Lets the page play until something of it is heard, and returns what that is, from its first sample on. */
export async function advanceToSound(page: Page): Promise<Float32Array> {
  await page.waitForFunction(() => window.steppedOutput !== undefined)
  let heard = new Float32Array()
  await expect(async () => {
    const samples = await advance(page, 0.02)
    heard = samples.slice(samples.findIndex((sample) => sample !== 0))
    expect(samples.some((sample) => sample !== 0)).toBe(true)
  }).toPass({ intervals: [10] })
  return heard
}

/**
 * Lets the page play until it shows what `selector` finds: looked for with every frame. Time passes in small steps, so
 * that the playhead does not jump; at a real output it passes by itself.
 */
export async function playUntil(page: Page, selector: string): Promise<void> {
  await page.evaluate(async (sought) => {
    while (!document.querySelector(sought)) {
      await window.steppedOutput?.pass(0.1)
      await new Promise(requestAnimationFrame)
    }
  }, selector)
}
