import { expect, type Page } from '@playwright/test'
import { encodeWav } from '../../src/audio/files/wav-writer'
import { expectFigures, type GivenFile, giveTake, openBench } from './bench-page'
import { captureOutput, takeCaptured } from './capture'

export const RATE = 48_000

interface Tone {
  readonly frequencyHz: number
  /** Amplitude, full scale = 1. */
  readonly level: number
  readonly seconds: number
}

/** A steady tone as a file. */
function toneFile({ frequencyHz, level, seconds }: Tone): GivenFile {
  const tone = Float32Array.from(
    { length: seconds * RATE },
    (_, n) => level * Math.sin((2 * Math.PI * frequencyHz * n) / RATE),
  )
  const { bytes } = encodeWav({ sampleRate: RATE, channels: [tone] }, 'float32')
  return { name: 'tone.wav', mimeType: 'audio/wav', buffer: Buffer.from(bytes) }
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
  await openBench(page)
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
