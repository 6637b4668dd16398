import { expect, type Locator, test } from '@playwright/test'
import { openBench } from './setup/bench-page'

/** Whether all of its words are seen: none is cut at its end. */
const isWhole = (words: Locator) => words.evaluate((element) => element.scrollWidth <= element.clientWidth)

test('for a class the name of the take is whole, however long the words of the last change', async ({
  page,
}) => {
  await page.setViewportSize({ width: 1024, height: 768 })
  await openBench(page)
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
