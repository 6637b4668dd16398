import { writeFileSync } from 'node:fs'
import { expect, type Page, test } from '@playwright/test'
import { encodeWav } from '../../src/files/wav/wav-writer'
import { expectFigures, giveTake, openApp } from './app-page'
import { captureOutput, takeCaptured } from './capture'

export const RATE = 48_000

interface Tone {
  readonly frequencyHz: number
  /** Amplitude, full scale = 1. */
  readonly level: number
  readonly seconds: number
}

/** Where a steady tone was written as a file: handed to the browser as bytes, a long one would take seconds. */
function toneFile({ frequencyHz, level, seconds }: Tone): string {
  const tone = Float32Array.from(
    { length: seconds * RATE },
    (_, n) => level * Math.sin((2 * Math.PI * frequencyHz * n) / RATE),
  )
  const { bytes } = encodeWav({ sampleRate: RATE, channels: [tone] }, 'float32')
  const file = test.info().outputPath('tone.wav')
  writeFileSync(file, new Uint8Array(bytes))
  return file
}

/**
 * Opens the bench with a tone as its take. What reaches the output is recorded as it plays, unless `prepareOutput`
 * provides otherwise. Needs `bypassCSP`.
 */
export async function openWithTone(
  page: Page,
  tone: Tone,
  prepareOutput: (page: Page) => Promise<void> = captureOutput,
): Promise<void> {
  await prepareOutput(page)
  await openApp(page)
  await giveTake(page, toneFile(tone))
  await expect(page.getByRole('banner')).toContainText('tone.wav')
  await expectFigures(page)
}

/** What reaches the output during `seconds`. */
export async function captureFor(page: Page, seconds: number): Promise<Float32Array> {
  await takeCaptured(page)
  await page.waitForTimeout(seconds * 1000)
  return takeCaptured(page)
}
