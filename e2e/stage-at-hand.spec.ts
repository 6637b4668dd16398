import { expect, type Page, test } from '@playwright/test'
import { openBench } from './setup/bench-page'

const choose = (page: Page, name: RegExp) => page.getByRole('button', { name }).first().click()

for (const width of [1920, 1440, 1024, 768, 360]) {
  test(`at ${width} px makeup by loudness stands right beneath the makeup gain`, async ({ page }) => {
    await page.setViewportSize({ width, height: 900 })
    await openBench(page)
    await choose(page, /^3 ?Compressor/)
    const gain = await page.getByText('Makeup gain', { exact: true }).boundingBox()
    const field = await page.getByRole('textbox', { name: 'Makeup gain, typed' }).boundingBox()
    const tool = await page.getByRole('button', { name: 'Match loudness by makeup gain' }).boundingBox()
    if (!gain || !field || !tool) throw new Error('not all of it is seen')
    expect(tool.x).toBeGreaterThan(gain.x)
    expect(tool.x + tool.width).toBeLessThanOrEqual(field.x + field.width + 1)
    expect(Math.abs(tool.y - (field.y + field.height))).toBeLessThan(tool.height)
  })
}
