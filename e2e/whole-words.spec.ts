import { expect, type Locator } from '@playwright/test'
import { keepTwoAndCompareBand, openApp } from './setup/app-page'
import { test } from './setup/shared-app'

/** Whether all of its words are seen: none is cut at its end. */
const isWhole = (words: Locator) => words.evaluate((element) => element.scrollWidth <= element.clientWidth)

test('for a class the name of the take is whole, however long the words of the last change', async ({
  page,
}) => {
  await page.setViewportSize({ width: 1024, height: 768 })
  await page
    .getByRole('button', { name: /^3 ?Compressor/ })
    .first()
    .click()
  await page.getByRole('textbox', { name: 'Threshold, typed' }).fill('-20')
  await page.keyboard.press('Enter')
  await page.getByRole('textbox', { name: 'Threshold, typed' }).blur()
  await page.keyboard.press('p')
  await expect(page.getByRole('button', { name: /^Undo: threshold/ })).toBeVisible()
  for (const width of [1024, 1280]) {
    await page.setViewportSize({ width, height: 768 })
    expect(await isWhole(page.getByTitle('Salt on the Steps')), `${width} px`).toBe(true)
  }
})

test('in the list of trials every word stands in one piece on a narrow screen', async ({ page }) => {
  await page.setViewportSize({ width: 360, height: 740 })
  await page
    .getByRole('button', { name: /^3 ?Compressor/ })
    .first()
    .click()
  await page.keyboard.press('c')
  await page.keyboard.press('t')
  await page.getByRole('button', { name: 'Begin' }).click()
  await expect(page.getByRole('heading', { name: /Round 1/ })).toBeVisible()
  await page.keyboard.press('Escape')
  await page.getByRole('button', { name: 'Quit trial' }).click()
  const table = page.getByRole('region', { name: 'Trials so far' }).getByRole('table')
  await expect(table.getByRole('cell', { name: '3 Compressor' })).toBeVisible()
  const broken = await table.locator('th, td').evaluateAll((cells) =>
    cells.flatMap((cell) => {
      const text = document.createTreeWalker(cell, NodeFilter.SHOW_TEXT)
      const found: string[] = []
      for (let node = text.nextNode(); node; node = text.nextNode()) {
        for (const { 0: word, index } of (node.textContent ?? '').matchAll(/\S+/g)) {
          const range = document.createRange()
          range.setStart(node, index)
          range.setEnd(node, index + word.length)
          if (range.getClientRects().length > 1) found.push(word)
        }
      }
      return found
    }),
  )
  expect(broken).toEqual([])
  const [sheet, taken] = await Promise.all([page.getByRole('dialog').boundingBox(), table.boundingBox()])
  expect((taken?.x ?? 0) + (taken?.width ?? 0)).toBeLessThan((sheet?.x ?? 0) + (sheet?.width ?? 0) - 16)
})

test('at every width levels are seen whole in the bar, whatever is compared', async ({ page }) => {
  await keepTwoAndCompareBand(page)
  await page.getByRole('heading', { name: /Equaliser/ }).click()
  await page.keyboard.press('Space')
  const bar = page.getByRole('region', { name: 'Listening' })
  const levels = bar.getByTitle(/^At the output: peak, limited to −1 dBFS/)
  for (const width of [1440, 1024, 768, 360]) {
    await page.setViewportSize({ width, height: 800 })
    await expect(levels).toHaveText(/dBFS, .* LUFS$/)
    const alsoSeen =
      width > 500 ? [bar.getByTitle('Peaks limited to −1 dBFS'), bar.getByText(/^reduction/)] : []
    for (const words of [levels, ...alsoSeen]) {
      expect.soft(await isWhole(words), `${width} px`).toBe(true)
      const box = await words.boundingBox()
      expect.soft((box?.x ?? 0) + (box?.width ?? 0), `${width} px`).toBeLessThanOrEqual(width)
    }
  }
})

test('on a phone the bar takes a fifth of the height, and says how sides are matched and why neither is lit', async ({
  browser,
}) => {
  const page = await browser.newPage({
    viewport: { width: 360, height: 740 },
    hasTouch: true,
    isMobile: true,
  })
  await openApp(page)
  const bar = page.getByRole('region', { name: 'Listening' })
  const height = (await bar.boundingBox())?.height
  expect(height).toBeLessThanOrEqual(740 / 5)
  await expect(bar.getByText(/^matched: without −\d+(\.\d)? dB$/)).toBeInViewport()
  // No keys are named where there is no keyboard, and what is pressed while listening is large enough for a finger.
  for (const key of ['Space', 'X']) await expect(bar.getByText(key, { exact: true })).toBeHidden()
  const compare = bar.getByRole('button', { name: 'whole chain' })
  const pressed = [
    bar.getByRole('button', { name: 'Play' }),
    bar.locator('label', { hasText: /^without$/ }),
    bar.locator('label', { hasText: /^with$/ }),
    bar.locator('label', { hasText: 'matched' }),
    compare,
    bar.getByRole('button', { name: 'alone' }),
  ]
  for (const control of pressed)
    expect.soft((await control.boundingBox())?.height, `${control}`).toBeGreaterThanOrEqual(44)
  // A choice folds what it was made in.
  await compare.tap()
  await bar.locator('label', { hasText: 'stage 3' }).tap()
  await expect(bar.getByRole('button', { name: 'stage 3' })).toHaveAttribute('aria-expanded', 'false')
  await page.keyboard.press('h')
  await expect(bar.getByRole('button', { name: 'difference', exact: true })).toBeInViewport()
  expect((await bar.boundingBox())?.height).toBe(height)
  await page.close()
})

test('while stored versions are compared nothing is wider than a narrow screen', async ({ page }) => {
  await page.setViewportSize({ width: 1440, height: 900 })
  await page.keyboard.press('k')
  await page.keyboard.press('c')
  await page.keyboard.press('k')
  await page.locator('label', { hasText: 'versions' }).click()
  await expect(page.getByText(/lanes: B$/)).toBeVisible()
  for (const width of [768, 360]) {
    await page.setViewportSize({ width, height: 740 })
    // Pictures take their width from the page a frame later.
    await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBe(width)
  }
})
