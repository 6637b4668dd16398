import { expect, type Page } from '@playwright/test'
import { test } from './setup/shared-app'

const choose = (page: Page, name: RegExp) => page.getByRole('button', { name }).first().click()

for (const width of [1920, 1440, 1024, 768, 360]) {
  test(`at ${width} px makeup by loudness stands right beneath the makeup gain`, async ({ page }) => {
    await page.setViewportSize({ width, height: 900 })
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

for (const viewport of [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
  { width: 768, height: 1024 },
  { width: 360, height: 740 },
]) {
  test(`at ${viewport.width} px what came of copying and pasting is seen whole, and no control moves or is covered`, async ({
    page,
  }) => {
    await page.context().grantPermissions(['clipboard-read', 'clipboard-write'])
    await page.setViewportSize(viewport)
    for (const name of [/^4 ?De-esser/, /^1 ?Equaliser/]) {
      await choose(page, name)
      const stage = page.getByRole('region', { name: /De-esser|Equaliser/ })
      const menu = stage.getByRole('button', { name: 'Stage', exact: true })
      const controls = stage.locator('button, input, select')
      const boxes = () =>
        controls.evaluateAll((all) =>
          all.map((control) => {
            const { left, top, width, height } = control.getBoundingClientRect()
            return {
              left,
              top: top + window.scrollY,
              right: left + width,
              bottom: top + window.scrollY + height,
            }
          }),
        )
      await menu.scrollIntoViewIfNeeded()
      const before = await boxes()
      await page.evaluate(() => navigator.clipboard.writeText('good morning'))
      await menu.click()
      await stage.getByRole('button', { name: /^Paste/ }).click()
      const news = stage.getByText('The clipboard holds no stage.')
      const seen = await news.boundingBox()
      const bar = await page.getByRole('region', { name: 'Listening' }).boundingBox()
      if (!seen) throw new Error('it is not seen')
      expect(seen.y + seen.height).toBeLessThanOrEqual(bar?.y ?? 0)
      expect(seen.x).toBeGreaterThanOrEqual(0)
      expect(seen.x + seen.width).toBeLessThanOrEqual(viewport.width)
      expect(await boxes()).toEqual(before)
      const above = await page.evaluate(() => window.scrollY)
      const covered = before.filter(
        (box) =>
          box.left < seen.x + seen.width - 1 &&
          box.right > seen.x + 1 &&
          box.top < above + seen.y + seen.height - 1 &&
          box.bottom > above + seen.y + 1,
      )
      expect(covered).toEqual([])
    }
  })
}
