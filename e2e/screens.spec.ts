import { fileURLToPath } from 'node:url'
import { expect, test } from '@playwright/test'
import { openBench } from './setup/bench-page'

const WIDTHS = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
  { width: 768, height: 1024 },
  { width: 360, height: 740 },
]

/** The picture in the README: `PICTURES=1 npm run browser -- screens` takes it anew. */
const README_PICTURE = fileURLToPath(new URL('../public/pictures/bench.png', import.meta.url))

for (const viewport of WIDTHS) {
  for (const colorScheme of ['light', 'dark'] as const) {
    test(`at ${viewport.width} px, ${colorScheme}, in use, nothing is cut off sideways`, async ({
      browser,
    }, info) => {
      const page = await browser.newPage({ viewport, colorScheme })
      await openBench(page)
      await page.getByRole('switch', { name: '4 De-esser' }).click()
      await page
        .getByRole('button', { name: /^3? ?Compressor/ })
        .first()
        .click()
      await page.keyboard.press('Space')
      await expect(page.getByRole('button', { name: /^Stop/ })).toBeVisible()
      await page.waitForTimeout(2500)
      const shot = `${viewport.width}-${colorScheme}`
      await page.screenshot({ path: info.outputPath(`${shot}.png`), fullPage: true })
      const taken = await page.evaluate(() => document.documentElement.scrollWidth)
      expect(taken).toBeLessThanOrEqual(viewport.width)
      if (process.env.PICTURES && shot === '1440-light') await page.screenshot({ path: README_PICTURE })
      await page.close()
    })
  }
}
