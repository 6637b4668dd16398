import { fileURLToPath } from 'node:url'
import { withServedPage } from '../setup/served-page'
import type { PageResult } from './page/page'

const PORT = 4175

/** Has a page in Chromium compare the core with the browser's native nodes. */
export function benchInBrowser(): Promise<PageResult[]> {
  return withServedPage(fileURLToPath(new URL('./page', import.meta.url)), PORT, async (page) => {
    await page.waitForFunction(() => window.runBench !== undefined)
    return page.evaluate(async () => (await window.runBench?.()) ?? [])
  })
}
