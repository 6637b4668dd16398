import { fileURLToPath } from 'node:url'
import { expect, test } from '@playwright/test'
import { expectFigures, giveTake, openBench } from './setup/bench-page'

// One second of the demo take, 48 kHz mono, encoded by general-purpose encoders. Lossy ones may add silence.
const TAKES = [
  { file: 'second.flac', says: '16-bit FLAC', exact: true },
  { file: 'second.mp3', says: 'MP3', exact: false },
  { file: 'second.m4a', says: 'M4A', exact: false },
  { file: 'second.ogg', says: 'OGG', exact: false },
] as const

for (const { file, says, exact } of TAKES) {
  test(`${file} is taken in at its own rate and measured`, async ({ page }) => {
    await openBench(page)
    await giveTake(page, fileURLToPath(new URL(`./takes/${file}`, import.meta.url)))
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
