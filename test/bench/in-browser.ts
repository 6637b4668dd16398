import { fileURLToPath } from 'node:url'
import { withServedPage } from '../setup/served-page'
import type { LiveCost } from './live-cost'
import type { PageResult } from './page/page'

const PORT = 4175
const CANCELS = 60

/** What was measured in Chromium. */
export interface InBrowser {
  /** The core beside the browser's native nodes. */
  readonly results: readonly PageResult[]
  readonly liveCost: LiveCost
  /** From cancelling a job to the worker's being at the next one, ms, sorted. */
  readonly cancelMs: readonly number[]
}

/** Has a page in Chromium compare the core with the browser's native nodes, and time listening and cancelling there. */
export function benchInBrowser(): Promise<InBrowser> {
  return withServedPage(fileURLToPath(new URL('./page', import.meta.url)), PORT, async (page) => {
    await page.waitForFunction(() => window.runBench !== undefined)
    const results = await page.evaluate(async () => (await window.runBench?.()) ?? [])
    const liveCost = await page.evaluate(() => window.runLiveCost?.())
    if (!liveCost) throw new Error('the page did not time what listening costs')
    const cancelMs = await page.evaluate(async (times) => (await window.runCancels?.(times)) ?? [], CANCELS)
    return { results, liveCost, cancelMs: cancelMs.sort((a, b) => a - b) }
  })
}
