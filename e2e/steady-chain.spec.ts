import { expect, type Page } from '@playwright/test'
import { expectFigures } from './setup/app-page'
import { test } from './setup/shared-app'

const add = async (page: Page, name: RegExp) => {
  await page.getByRole('button', { name: '+ Add stage' }).click()
  await page.getByRole('button', { name }).click()
}

for (const width of [1440, 1024]) {
  test(`at ${width} px neither a digit more nor playing moves what stands beneath the chain`, async ({
    page,
  }) => {
    await page.setViewportSize({ width, height: 768 })
    // The compressor is what is selected at first.
    const heading = page.getByRole('heading', { name: /Compressor/ })
    await expect(heading).toBeVisible()
    const top = async () => (await heading.boundingBox())?.y
    await expect(page.getByRole('listitem').filter({ hasText: /max \d(\.\d)? dB/ })).toHaveCount(1)
    const before = await top()
    await page.getByRole('textbox', { name: 'Threshold, typed' }).fill('-28')
    await page.keyboard.press('Enter')
    await expect(page.getByRole('listitem').filter({ hasText: /max \d\d(\.\d)? dB/ })).toHaveCount(2)
    await expectFigures(page)
    expect(await top()).toBe(before)
    await page.getByRole('textbox', { name: 'Threshold, typed' }).blur()
    await page.keyboard.press('Space')
    await expect(page.getByRole('meter')).toHaveCount(2)
    expect(await top()).toBe(before)
  })
}

test('the name of a stage never touches its switch, however many stages stand in a line', async ({
  page,
}) => {
  for (const count of [4, 5, 6, 7]) {
    if (count > 4) await add(page, /^Compressor/)
    const stages = page.locator('li[data-stage-id]')
    await expect(stages).toHaveCount(count)
    for (const width of [1440, 1300, 1024, 900, 360]) {
      await page.setViewportSize({ width, height: 900 })
      const gaps = await stages.evaluateAll((items) =>
        items.map((item) => {
          const name = item.querySelector('button[aria-current] > span:last-child')?.getBoundingClientRect()
          const way = item.querySelector('[role="switch"] > span')?.getBoundingClientRect()
          if (!name || !way) return Number.NaN
          // Above it, beneath it, or to its left.
          return name.bottom <= way.top || name.top >= way.bottom ? way.height : way.left - name.right
        }),
      )
      for (const gap of gaps) expect(gap, `${count} stages, ${width} px`).toBeGreaterThanOrEqual(4)
    }
  }
})

test('up to 32 stages stand in lines or in one that scrolls, the output last, and nothing is cut off', async ({
  page,
}, info) => {
  const stages = page.locator('li[data-stage-id]')
  for (const count of [9, 32]) {
    while ((await stages.count()) < count) await add(page, /^Gain/)
    await expect(stages).toHaveCount(count)
    for (const width of [1440, 1024, 768, 360]) {
      await page.setViewportSize({ width, height: 900 })
      const chain = page.getByRole('region', { name: 'Chain' })
      await chain.screenshot({ path: info.outputPath(`${count}-${width}.png`) })
      const of = `${count} stages, ${width} px`
      expect.soft(await page.evaluate(() => document.documentElement.scrollWidth), of).toBe(width)
      const boxes = await chain.getByRole('listitem').evaluateAll((items) =>
        items.slice(0, -1).map((item) => {
          const { left, top, width: wide } = item.getBoundingClientRect()
          return { left, top, wide }
        }),
      )
      // Each stands behind the one before, in the same line or at the beginning of the next.
      const isBehind = boxes.every(({ left, top }, i) => {
        const before = boxes[i - 1]
        return !before || top > before.top + 8 || left >= before.left + before.wide - 1
      })
      expect.soft(isBehind, of).toBe(true)
      const height = (await chain.boundingBox())?.height ?? Number.POSITIVE_INFINITY
      if (width === 1440) expect.soft(height, of).toBeLessThan(360)
      if (width === 360) expect.soft(height, of).toBeLessThan(180)
    }
    await page.setViewportSize({ width: 1440, height: 900 })
  }
})
