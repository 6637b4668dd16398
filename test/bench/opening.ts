import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { encodeWav } from '../../src/files/wav/wav-writer'
import { withServedPage } from '../setup/served-page'
import { longTake } from './long-take'

const PORT = 4177
const NAME = 'ten minutes.wav'
const MINUTES = 10

/** What opening a long file is like for the page, ms. */
export interface Opening {
  /** From choosing the file to its name standing in the header, and to its figures being there. */
  readonly shownMs: number
  readonly figuresMs: number
  /** Tasks of the main thread over 50 ms meanwhile, longest first. */
  readonly longTasksMs: readonly number[]
}

/** Opens a stereo WAV file of ten minutes on the built page. */
export async function benchOpening(): Promise<Opening> {
  const folder = mkdtempSync(join(tmpdir(), 'evenhand-take-'))
  const path = join(folder, NAME)
  const { sampleRate, channels } = longTake(MINUTES)
  const stereo = { sampleRate, channels: [...channels, ...channels] }
  writeFileSync(path, encodeWav(stereo, 'pcm16', { fileName: NAME }).bytes)
  try {
    return await withServedPage(fileURLToPath(new URL('../..', import.meta.url)), PORT, async (page) => {
      const figures = page.getByRole('row', { name: /^Integrated.*\d/ })
      await figures.waitFor({ timeout: 60_000 })
      await page.evaluate(() => {
        const longTasks: number[] = []
        new PerformanceObserver((list) => {
          for (const { duration } of list.getEntries()) longTasks.push(duration)
        }).observe({ type: 'longtask' })
        window.longTasks = longTasks
      })
      const start = performance.now()
      await page.locator('input[data-role="take"]').setInputFiles(path)
      await page.getByRole('banner').getByText(NAME).first().waitFor({ timeout: 120_000 })
      const shownMs = performance.now() - start
      await figures.waitFor({ timeout: 120_000 })
      const figuresMs = performance.now() - start
      // Long tasks are told of late.
      await page.waitForTimeout(300)
      const longTasksMs = await page.evaluate(() => window.longTasks ?? [])
      return { shownMs, figuresMs, longTasksMs: longTasksMs.sort((a, b) => b - a) }
    })
  } finally {
    rmSync(folder, { recursive: true })
  }
}

declare global {
  interface Window {
    longTasks?: number[]
  }
}
