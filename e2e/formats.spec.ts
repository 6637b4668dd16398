import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, type Page, test } from '@playwright/test'
import { deliver, expectFigures, giveTake, openApp } from './setup/app-page'

// One second of the demo take, 48 kHz mono, encoded by general-purpose encoders.
const TAKES = [
  { file: 'second.flac', says: '16-bit FLAC', exact: true },
  { file: 'second.mp3', says: 'MP3', exact: true },
  { file: 'second.m4a', says: 'M4A', exact: true },
  { file: 'second.ogg', says: 'OGG', exact: false },
] as const

const pathOf = (file: string) => fileURLToPath(new URL(`./takes/${file}`, import.meta.url))

test.describe('on a page that is open', () => {
  // One after another on the same page: each take replaces the one before. After a failure it is opened anew.
  test.describe.configure({ mode: 'default' })
  let page: Page

  test.beforeAll(async ({ browser }) => {
    page = await browser.newPage()
    await openApp(page)
  })

  test.afterAll(() => page.close())

  for (const { file, says, exact } of TAKES) {
    test(`${file} is taken in at its own rate and measured`, async () => {
      await giveTake(page, pathOf(file))
      const banner = page.getByRole('banner')
      await expect(banner).toContainText(file)
      await expect(banner).toContainText('48 kHz')
      await expect(banner).toContainText('mono')
      await expect(banner).toContainText(says)
      await expect(banner).toContainText(exact ? '0:01.0' : /0:01\.[01]/)
      await expect(banner).toContainText(/\d LUFS/)
      await expectFigures(page)
      await expect(page.getByRole('alert')).toBeEmpty()
    })
  }

  test('an MP3 that does not state its delay is said to start late, perhaps', async () => {
    const buffer = readFileSync(pathOf('second.mp3'))
    buffer.fill(0, buffer.indexOf('Info'), buffer.indexOf('Info') + 4)
    await giveTake(page, { name: 'untagged.mp3', mimeType: 'audio/mpeg', buffer })
    await expect(page.getByText(/untagged\.mp3.* may start up to 36 ms late/)).toBeVisible()
  })
})

/** The samples of a take as they come back with every stage off. */
async function samplesOf(page: Page, file: string): Promise<Float32Array> {
  await giveTake(page, pathOf(file))
  await expect(page.getByRole('banner')).toContainText(file)
  const { sound } = await deliver(page)
  return sound.channels[0] ?? new Float32Array(0)
}

/** By how many frames `b` comes after `a`, at most `most`: where it differs least from a stretch in the middle of it. */
function lagOf(a: Float32Array, b: Float32Array, most: number): number {
  const from = a.length / 2
  const stretch = a.subarray(from, from + 8000)
  const differences = Array.from({ length: 2 * most + 1 }, (_, i) =>
    stretch.reduce((sum, sample, n) => sum + (sample - (b[from + n + i - most] ?? 0)) ** 2, 0),
  )
  return differences.indexOf(Math.min(...differences)) - most
}

test('MP3 and M4A takes lie where the sound lies that was encoded, frame for frame', async ({ page }) => {
  await openApp(page)
  for (const name of ['1 Equaliser', '2 Equaliser', '3 Compressor', '4 De-esser'])
    await page.getByRole('switch', { name }).click()
  const original = await samplesOf(page, 'second.flac')
  for (const file of ['second.mp3', 'second.m4a']) {
    const samples = await samplesOf(page, file)
    expect(samples.length, file).toBe(original.length)
    expect(lagOf(original, samples, 1300), file).toBe(0)
  }
  await expect(page.getByText(/ms late/)).toHaveCount(0)
})
