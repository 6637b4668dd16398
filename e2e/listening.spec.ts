import { readdirSync, readFileSync } from 'node:fs'
import { expect, type Page, test } from '@playwright/test'
import { readWav } from '../src/audio/files/wav-reader'
import { encodeWav } from '../src/audio/files/wav-writer'
import { expectFigures, type GivenFile, giveTake, openBench, RECORDING } from './setup/bench-page'
import { captureOutput, takeCaptured } from './setup/capture'
import { referenceLoudness } from './setup/reference-loudness'

const SAMPLE_RATE = 48_000

// For the recorder at the output.
test.use({ bypassCSP: true })

/** Five recordings one after another: long enough for where a meter's blocks fall not to matter. */
function recordingsInARow(): GivenFile {
  const folder = RECORDING.replace(/[^/]*$/, '')
  const spoken = readdirSync(folder)
    .filter((name) => name.endsWith('.wav') && name !== 'Noise.wav')
    .slice(0, 5)
  const parts = spoken.map(
    (name) => readWav(readFileSync(folder + name), name).sound.channels[0] ?? new Float32Array(),
  )
  const joined = new Float32Array(parts.reduce((sum, part) => sum + part.length, 0))
  let from = 0
  for (const part of parts) {
    joined.set(part, from)
    from += part.length
  }
  const { bytes } = encodeWav({ sampleRate: SAMPLE_RATE, channels: [joined] }, 'pcm16')
  return { name: 'places.wav', mimeType: 'audio/wav', buffer: Buffer.from(bytes) }
}

/** Plays the take once through and returns what reached the output. */
async function playThrough(page: Page): Promise<Float32Array> {
  await takeCaptured(page)
  await page.keyboard.press('Space')
  await expect(page.getByRole('button', { name: /^Stop/ })).toBeVisible()
  await expect(page.getByRole('button', { name: /^Play/ })).toBeVisible({ timeout: 20_000 })
  // What is on its way to the output still counts.
  await page.waitForTimeout(300)
  const samples = await takeCaptured(page)
  return samples.subarray(samples.findIndex((sample) => sample !== 0))
}

test('without and with are equally loud within 0.1 LU at the output (ebur128-wasm), and are not the same', async ({
  page,
}) => {
  await captureOutput(page)
  await openBench(page)
  await giveTake(page, recordingsInARow())
  await expect(page.getByRole('banner')).toContainText('places.wav')
  await expectFigures(page)
  // The first sound of all fades in: let it pass.
  await playThrough(page)

  const withSide = await playThrough(page)
  await page.keyboard.press('x')
  const without = await playThrough(page)
  const loudness = [without, withSide].map((samples) => referenceLoudness(samples, SAMPLE_RATE))
  expect(Math.abs((loudness[0] ?? Number.NaN) - (loudness[1] ?? Number.NaN))).toBeLessThan(0.1)

  // Not matched, the two differ by what the table says: the check above can fail.
  await page.keyboard.press('m')
  const unmatched = referenceLoudness(await playThrough(page), SAMPLE_RATE)
  expect(Math.abs(unmatched - (loudness[1] ?? Number.NaN))).toBeGreaterThan(0.3)
})
