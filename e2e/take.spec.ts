import { expect, type Page } from '@playwright/test'
import { test } from './setup/shared-app'

const surface = (page: Page) => page.getByRole('slider', { name: 'Position in the take' })
const wave = (page: Page) => page.getByRole('img', { name: /^The wave/ })

test('the lanes share the height of the window, the wave gets the most of it', async ({ page }) => {
  for (const { width, height, waveHeight } of [
    { width: 1440, height: 900, waveHeight: 100 },
    { width: 1920, height: 1080, waveHeight: 170 },
    { width: 2560, height: 1440, waveHeight: 260 },
  ]) {
    await page.setViewportSize({ width, height })
    const heightOf = async (name: RegExp) =>
      (await page.getByRole('img', { name }).first().boundingBox())?.height ?? 0
    await expect
      .poll(() => heightOf(/^The wave/), { message: `${width} px` })
      .toBeGreaterThanOrEqual(waveHeight)
    for (const name of [/^Gain reduction/, /^Short-term/])
      expect(await heightOf(name), `${name} at ${width} px`).toBeLessThanOrEqual(
        (await heightOf(/^The wave/)) / 2,
      )
  }
})

test('an end of the loop is seen and dragged, and single cycles are seen by keys', async ({ page }, info) => {
  const box = await surface(page).boundingBox()
  if (!box) throw new Error('the take is not drawn')
  // Below the marks.
  const y = box.y + 60
  const drag = async (from: number, to: number) => {
    await page.mouse.move(box.x + from * box.width, y)
    await page.mouse.down()
    await page.mouse.move(box.x + to * box.width, y, { steps: 3 })
    await page.mouse.up()
  }
  const loop = page.getByRole('button', { name: /^Loop \d/ })
  await drag(0.4, 0.6)
  await expect(loop).toHaveText(/Loop 0:10\.\d+ – 0:15\.\d+/)
  await drag(0.6, 0.8)
  await expect(loop).toHaveText(/Loop 0:10\.\d+ – 0:20\.\d+/)
  await page.mouse.click(box.x + 0.55 * box.width, y)
  await surface(page).focus()
  for (let presses = 0; presses < 20; presses++) await page.keyboard.press('+')
  await expect(page.getByRole('button', { name: 'Zoom in' })).toBeDisabled()
  // Both sides are lines from sample to sample: 240 of them in 5 ms, and one at each side of what is seen.
  const isCycles = () =>
    wave(page).evaluate((picture) =>
      [...picture.querySelectorAll('path')].every((path) => {
        const samples = path.getAttribute('d')?.match(/[ML]/g)?.length ?? 0
        return samples >= 240 && samples <= 243
      }),
    )
  await expect.poll(isCycles).toBe(true)
  await page.screenshot({ path: info.outputPath('cycles.png') })
  await page.keyboard.press('0')
  await expect(page.getByRole('button', { name: 'Whole take' })).toBeDisabled()
})
