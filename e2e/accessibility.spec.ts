import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, type Page, test } from '@playwright/test'
import type { AxeResults, RunOptions } from 'axe-core'
import { openBench } from './setup/bench-page'

// Outside source: the rules of axe-core that stand for the success criteria of WCAG 2.2, levels A and AA, and its
// best practices.
const AXE = readFileSync(fileURLToPath(import.meta.resolve('axe-core/axe.min.js')), 'utf8')
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

/** What axe finds on the page as it is now, one line for each element. */
async function violations(page: Page): Promise<string[]> {
  // At the end of the page nothing lies beneath the listening bar: axe would count what nobody can press there.
  await page.evaluate(() => window.scrollTo(0, document.documentElement.scrollHeight))
  await page.evaluate(AXE)
  const results = await page.evaluate<AxeResults, RunOptions>(
    (options) => Reflect.get(window, 'axe').run(document, options),
    { runOnly: { type: 'tag', values: TAGS } },
  )
  return results.violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ target }) => `${id}: ${help}: ${target.join(' ')}`),
  )
}

const sizes = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
  { width: 360, height: 740 },
]

for (const colorScheme of ['light', 'dark'] as const) {
  for (const viewport of sizes) {
    test(`at ${viewport.width} px, ${colorScheme}, nothing keeps anyone out`, async ({ browser }) => {
      const page = await browser.newPage({ viewport, colorScheme })
      await openBench(page)
      for (const number of [1, 2, 3, 4]) {
        expect(await violations(page), `stage ${number} at hand`).toEqual([])
        await page.keyboard.press(']')
      }
      await page.getByText('Figures and sources').click()
      const unfold = page.getByRole('button', { name: 'what is compared' })
      if (await unfold.isVisible()) await unfold.click()
      await page.getByRole('switch', { name: '3 Compressor' }).click()
      await page.getByRole('button', { name: 'Add a stage' }).click()
      await page.getByRole('button', { name: /^Saturator/ }).click()
      expect(await violations(page), 'with everything unfolded').toEqual([])
      await page.close()
    })
  }

  test(`sheets, ${colorScheme}, keep nobody out`, async ({ browser }) => {
    const page = await browser.newPage({ colorScheme })
    await openBench(page)
    for (const name of ['Keys', 'Deliver', 'Blind trial', 'Terms']) {
      await page.getByRole('banner').getByRole('button', { name }).click()
      await expect(page.getByRole('dialog')).toBeVisible()
      expect(await violations(page), name).toEqual([])
      await page.keyboard.press('Escape')
    }
    await page.close()
  })
}

test('what axe is asked for is found: a picture without a sentence', async ({ page }) => {
  await openBench(page)
  await page.evaluate(() => document.querySelector('svg[role="img"]')?.removeAttribute('aria-label'))
  expect((await violations(page)).join()).toContain('svg-img-alt')
})
