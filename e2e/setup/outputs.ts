import type { Page } from '@playwright/test'

/** How a page can be left without its audio output. */
export type Loss = 'suspended' | 'closed' | 'frozen'

declare global {
  interface Window {
    /** Every audio context that plays, in the order in which they were made. */
    madeContexts?: AudioContext[]
    /** The frames from which the audio thread was told to play. */
    playedFrom?: number[]
  }
}

interface PlayMessage {
  readonly type?: string
  readonly fromFrame?: number
}

/** Keeps the page's audio contexts at hand, and what is played in them. Call before the page is opened. */
export async function followOutputs(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const made: AudioContext[] = []
    const played: number[] = []
    window.madeContexts = made
    window.playedFrom = played
    window.AudioContext = class extends AudioContext {
      constructor(options?: AudioContextOptions) {
        super(options)
        made.push(this)
      }
    }
    const post = MessagePort.prototype.postMessage
    MessagePort.prototype.postMessage = function (message: PlayMessage | null, ...rest: never[]) {
      if (message?.type === 'play' && message.fromFrame !== undefined) played.push(message.fromFrame)
      return post.call(this, message, ...rest)
    }
  })
}

/** Waits until the newest context has run for so long. */
export async function expectPlayed(page: Page, seconds: number): Promise<void> {
  await page.waitForFunction((time) => (window.madeContexts?.at(-1)?.currentTime ?? 0) > time, seconds)
}

/** Does to the newest context what a system does that takes the output away, or forgets to give it back. */
export async function loseOutput(page: Page, loss: Loss): Promise<void> {
  await page.evaluate(async (how) => {
    const context = window.madeContexts?.at(-1)
    if (!context) throw new Error('nothing was played')
    const { currentTime } = context
    if (how === 'suspended') await context.suspend()
    else if (how === 'closed') await context.close()
    else Object.defineProperty(context, 'currentTime', { get: () => currentTime })
  }, loss)
}

/** States of all contexts so far, and the frames they were played from. */
export async function outputsSoFar(page: Page): Promise<{ states: string[]; playedFrom: number[] }> {
  return page.evaluate(() => ({
    states: (window.madeContexts ?? []).map(({ state }) => state),
    playedFrom: [...(window.playedFrom ?? [])],
  }))
}
