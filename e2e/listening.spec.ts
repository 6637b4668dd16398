import { readdirSync, readFileSync } from 'node:fs'
import { expect, type Page, test } from '@playwright/test'
import { readWav } from '../src/files/wav/wav-reader'
import { encodeWav } from '../src/files/wav/wav-writer'
import { joined } from '../test/setup/signals'
import { expectFigures, type GivenFile, giveTake, openApp, RECORDING } from './setup/app-page'
import { referenceLoudness } from './setup/reference-loudness'
import { advance, advanceToSound, stepOutput } from './setup/stepped-output'

const SAMPLE_RATE = 48_000

// For the recorder at the output.
test.use({ bypassCSP: true })

/** Five recordings one after another. */
function recordingsInARow(): GivenFile {
  const folder = RECORDING.replace(/[^/]*$/, '')
  const spoken = readdirSync(folder)
    .filter((name) => name.endsWith('.wav') && name !== 'Noise.wav')
    .slice(0, 5)
  const parts = spoken.map(
    (name) => readWav(readFileSync(folder + name), name).sound.channels[0] ?? new Float32Array(),
  )
  const { bytes } = encodeWav({ sampleRate: SAMPLE_RATE, channels: [joined(parts)] }, 'pcm16')
  return { name: 'places.wav', mimeType: 'audio/wav', buffer: Buffer.from(bytes) }
}

/**
 * Loudness on average over four places where the meter's first block of 100 ms may begin: in so short a take its blocks
 * fall elsewhere on either side, which alone moves a figure by up to 0.2 LU.
 */
function meanLoudness(samples: Float32Array): number {
  const starts = [0, 0.025, 0.05, 0.075].map((seconds) => seconds * SAMPLE_RATE)
  const loudness = starts.map((start) => referenceLoudness(samples.subarray(start), SAMPLE_RATE))
  return loudness.reduce((sum, lufs) => sum + lufs, 0) / loudness.length
}

/** Plays the take once through and returns what reached the output, from the first sample that is not 0 on. */
async function playThrough(page: Page): Promise<Float32Array> {
  await page.keyboard.press('Space')
  const parts = [await advanceToSound(page)]
  const play = page.getByRole('button', { name: /^Play/ })
  while (!(await play.isVisible())) parts.push(await advance(page, 1))
  // What is on its way to the output still counts, and a whole block of the meter behind it.
  parts.push(await advance(page, 0.5))
  return joined(parts)
}

test('without and with are equally loud within 0.1 LU at the output (ebur128-wasm), and are not the same', async ({
  page,
}) => {
  await stepOutput(page, 60)
  await openApp(page)
  await giveTake(page, recordingsInARow())
  await expect(page.getByRole('banner')).toContainText('places.wav')
  await expectFigures(page)
  // The first sound of all fades in: let it pass.
  await playThrough(page)

  const processed = await playThrough(page)
  await page.keyboard.press('x')
  const bypassed = await playThrough(page)
  const loudness = [bypassed, processed].map(meanLoudness)
  expect(Math.abs((loudness[0] ?? Number.NaN) - (loudness[1] ?? Number.NaN))).toBeLessThan(0.1)

  // Not matched, the two differ by what the table says: the check above can fail.
  await page.keyboard.press('e')
  const unmatched = meanLoudness(await playThrough(page))
  expect(Math.abs(unmatched - (loudness[1] ?? Number.NaN))).toBeGreaterThan(0.3)
})
