import { expect, type Page } from '@playwright/test'
import { encodeWav } from '../src/files/wav/wav-writer'
import { test } from './setup/shared-app'

const lane = (page: Page) => page.getByRole('img', { name: /^Spectrogram/ })

/** Share of a canvas that has some ink, and that has nearly all of it. */
function inkOf(picture: HTMLCanvasElement | SVGElement | HTMLElement): { some: number; full: number } {
  if (!(picture instanceof HTMLCanvasElement)) throw new Error('no canvas')
  const { width, height } = picture
  const pixels = picture.getContext('2d')?.getImageData(0, 0, width, height).data ?? []
  let [some, full] = [0, 0]
  for (let i = 3; i < pixels.length; i += 4) {
    const ink = pixels[i] ?? 0
    if (ink > 20) some++
    if (ink > 200) full++
  }
  return { some: some / (width * height), full: full / (width * height) }
}

test('the spectrogram is drawn of the side that is heard, at any zoom, and closed again', async ({
  page,
}, info) => {
  const opener = page.getByRole('button', { name: /^Spectrogram/ })
  await expect(lane(page)).toHaveCount(0)
  await opener.click()
  await expect(lane(page)).toHaveAccessibleName(/, with: .* the louder\.$/)
  const whole = await lane(page).evaluate(inkOf)
  expect(whole.some).toBeGreaterThan(0.1)
  expect(whole.full).toBeGreaterThan(0.005)
  expect(whole.full).toBeLessThan(0.3)
  await page.keyboard.press('x')
  await expect(lane(page)).toHaveAccessibleName(/, without: .* the louder\.$/)
  expect(await lane(page).evaluate(inkOf)).not.toEqual(whole)
  await page.screenshot({ path: info.outputPath('spectrogram.png') })
  await page.getByRole('slider', { name: 'Position in the take' }).focus()
  await page.keyboard.press('ArrowRight')
  for (let presses = 0; presses < 13; presses++) await page.keyboard.press('+')
  await expect(lane(page)).toHaveAccessibleName(/ the louder\.$/)
  expect((await lane(page).evaluate(inkOf)).some).toBeGreaterThan(0.05)
  await page.keyboard.press('0')
  await opener.click()
  await expect(lane(page)).toHaveCount(0)
})

test('marks are gone to by keys, and clipped samples from the header', async ({ page }, info) => {
  const samples = Float32Array.from({ length: 5 * 48_000 }, (_, n) => {
    const isLoud = n >= 96_000 && n < 120_000
    return Math.max(-1, Math.min(1, (isLoud ? 3 : 0.2) * Math.sin((2 * Math.PI * 220 * n) / 48_000)))
  })
  const { bytes } = encodeWav({ sampleRate: 48_000, channels: [samples] }, 'pcm24')
  await page
    .locator('input[type=file][data-role=take]')
    .setInputFiles({ name: 'Too loud.wav', mimeType: 'audio/wav', buffer: Buffer.from(bytes) })
  const marks = page.getByRole('toolbar', { name: 'Marks' })
  await expect(marks.getByRole('button')).toHaveCount(1)
  await expect(marks.getByRole('button')).toHaveAccessibleName('Clipped samples at 0:02.00')
  const surface = page.getByRole('slider', { name: 'Position in the take' })
  await page.getByRole('button', { name: /^clipped \d+/ }).click()
  await expect(surface).toHaveAttribute('aria-valuetext', '2 seconds')
  await page.screenshot({ path: info.outputPath('clipped.png') })
  await surface.focus()
  await page.keyboard.press('Home')
  await marks.getByRole('button').focus()
  await page.keyboard.press('Enter')
  await expect(surface).toHaveAttribute('aria-valuetext', '2 seconds')
})
