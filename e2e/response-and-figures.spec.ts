import { expect, test } from '@playwright/test'
import { openApp, watchPage } from './setup/app-page'

test('spectrum and figures are those of the loop while one is set, and say so', async ({ page }) => {
  const { errors } = watchPage(page)
  await openApp(page)
  const caption = page.getByText(/against its bypass, /)
  const integrated = page.getByRole('row', { name: /^Integrated/ })
  await expect(caption).toHaveText('The whole chain against its bypass, whole take')
  const ofTake = await integrated.textContent()
  await page.getByRole('slider', { name: 'Position in the take' }).focus()
  for (const _ of [1, 2, 3]) await page.keyboard.press('ArrowRight')
  await page.keyboard.press('f')
  await expect(caption).toHaveText(/, loop 0:0\d\.\d–0:\d\d\.\d$/)
  await expect(page.getByText(/^spectrum: loop 0:0\d/)).toBeVisible()
  expect(await integrated.textContent()).not.toBe(ofTake)
  // A stage that is switched off changes the figures of the loop too, and they stay those of the loop.
  const ofLoop = await integrated.textContent()
  await page.getByRole('switch', { name: '3 Compressor' }).click()
  await expect(integrated).not.toHaveText(ofLoop ?? '')
  await expect(caption).toHaveText(/, loop 0:0\d/)
  await page.keyboard.press('l')
  await expect(caption).toHaveText(/, whole take$/)
  expect(errors).toEqual([])
})

test('a band is reached by one press of Tab and left by another, and read as it moves', async ({ page }) => {
  await openApp(page)
  const band = page.getByRole('slider', { name: '1 Equaliser, band a' })
  await page.getByRole('switch', { name: 'Spectrum difference' }).focus()
  await page.keyboard.press('Tab')
  await expect(band).toBeFocused()
  const readout = page.getByRole('region', { name: 'Response' }).getByRole('paragraph').first()
  const before = await readout.textContent()
  expect(before).toMatch(/Hz [A-G]♯?\d [+−]?\d+\.\d dB without −\d+, with −\d+ dBFS$/)
  await page.keyboard.press('ArrowRight')
  await expect(readout).not.toHaveText(before ?? '')
  await page.keyboard.press('PageDown')
  await expect(page.getByRole('slider', { name: '1 Equaliser, band b' })).toBeFocused()
  await page.keyboard.press('Tab')
  await expect(page.getByRole('region', { name: 'Response' }).locator(':focus')).toHaveCount(0)
})

test('the response is at least 240 px high at every width, and covers nothing of its own', async ({
  page,
}, info) => {
  await openApp(page)
  for (const [width, height] of [
    [360, 740],
    [768, 1024],
    [1024, 768],
    [1440, 900],
    [2560, 1440],
  ] as const) {
    await page.setViewportSize({ width, height })
    const plot = page.getByRole('region', { name: 'Response' }).getByRole('img')
    await expect
      .poll(async () => (await plot.boundingBox())?.height, `at ${width} px`)
      .toBeGreaterThanOrEqual(239)
    const region = await page.getByRole('region', { name: 'Figures' }).boundingBox()
    const table = await page.getByRole('table').boundingBox()
    expect
      .soft((table?.x ?? 0) + (table?.width ?? 0))
      .toBeLessThanOrEqual((region?.x ?? 0) + (region?.width ?? 0) + 0.5)
    for (const name of ['Response', 'Figures'])
      await page
        .getByRole('region', { name })
        .screenshot({ path: info.outputPath(`${name.toLowerCase()}-${width}.png`) })
  }
})
