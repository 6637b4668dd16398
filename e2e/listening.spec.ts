import { readdirSync, readFileSync } from 'node:fs'
import { expect, type Page, test } from '@playwright/test'
import { readWav } from '../src/audio/files/wav-reader'
import { encodeWav } from '../src/audio/files/wav-writer'
import { joined } from '../test/setup/signals'
import { expectFigures, type GivenFile, giveTake, openBench, RECORDING } from './setup/bench-page'
import { referenceLoudness } from './setup/reference-loudness'
import { advance, advanceToSound, stepOutput } from './setup/stepped-output'

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
  const { bytes } = encodeWav({ sampleRate: SAMPLE_RATE, channels: [joined(parts)] }, 'pcm16')
  return { name: 'places.wav', mimeType: 'audio/wav', buffer: Buffer.from(bytes) }
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
