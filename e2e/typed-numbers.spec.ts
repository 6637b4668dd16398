import { expect } from '@playwright/test'
import { openTimes } from './setup/app-page'
import { test } from './setup/shared-app'

for (const width of [1440, 1024, 360]) {
  test(`at ${width} px what is wrong with a typed number covers no control`, async ({ page }) => {
    await page.setViewportSize({ width, height: 900 })
    await page
      .locator('[data-stage-id]')
      .getByRole('button', { name: /^3? ?Compressor/ })
      .click()
    const settings = page.getByRole('region', { name: /Compressor/ })
    for (const name of ['Threshold', 'Attack', 'Mix']) {
      const field = settings.getByRole('textbox', { name: `${name}, typed` })
      await field.fill('abc')
      await field.press('Enter')
      const message = settings.getByRole('alert').filter({ hasText: 'Not understood' }).last()
      const box = await message.boundingBox()
      if (!box) throw new Error('nothing is said')
      expect(box.x).toBeGreaterThanOrEqual(0)
      expect(box.x + box.width).toBeLessThanOrEqual(width)
      const covered = await settings.locator('input, select, button').evaluateAll(
        (controls, { x, y, width, height }) =>
          controls
            .filter((control) => {
              const { left, right, top, bottom } = control.getBoundingClientRect()
              return left < x + width && right > x && top < y + height && bottom > y
            })
            .map((control) => control.outerHTML),
        box,
      )
      expect(covered, name).toEqual([])
      await field.press('Escape')
    }
  })

  test(`at ${width} px what is wrong with a typed time is read whole`, async ({ page }) => {
    await page.setViewportSize({ width, height: 900 })
    await openTimes(page)
    const times = page.getByRole('region', { name: 'Take' })
    for (const name of ['Position', 'Loop from', 'to']) {
      const field = times.getByRole('textbox', { name, exact: true })
      await field.fill('abc')
      await field.press('Enter')
      const message = times.getByRole('alert').filter({ hasText: 'Not understood' })
      const box = await message.boundingBox()
      expect(box?.x, name).toBeGreaterThanOrEqual(0)
      expect((box?.x ?? 0) + (box?.width ?? 0), name).toBeLessThanOrEqual(width)
      await field.press('Escape')
    }
  })
}
