import type { Page } from '@playwright/test'

declare global {
  interface Window {
    /** The sides that the audio thread was told to play since the last look, silent ones left out. */
    toldSides?: string[]
  }
}

interface Settings {
  readonly heard: string
  readonly monitorDb: number
}

/**
 * Makes chance hide the side `with` (true) or `without` behind X, or A, in every round, and listens to what the page
 * tells the audio thread. Call before the page is opened.
 */
export async function hideBehindX(page: Page, processed: boolean): Promise<void> {
  await page.addInitScript((bit) => {
    crypto.getRandomValues = (array) => {
      if (array instanceof Uint8Array) array.fill(bit)
      return array
    }
    const told: string[] = []
    window.toldSides = told
    const post = MessagePort.prototype.postMessage
    MessagePort.prototype.postMessage = function (
      message: { readonly settings?: Settings } | null,
      ...rest: never[]
    ) {
      const settings = message?.settings
      if (settings && settings.monitorDb > -100) told.push(settings.heard)
      return post.call(this, message, ...rest)
    }
  }, Number(processed))
}

/** The sides that the audio thread was told to play since the last call. */
export async function takeToldSides(page: Page): Promise<string[]> {
  return page.evaluate(() => window.toldSides?.splice(0) ?? [])
}
