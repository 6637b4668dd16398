import { basename } from 'node:path'
import { writeALawFile } from '../files'
import type { Part } from './part'

/** In which one of the two must happen, ms. */
const LIMIT_MS = 10_000

/** A file that not every engine can decode is opened, or refused with words. */
export const aLaw: Part = {
  title: 'A-law WAV opened or refused in 10 s',
  async look(lab) {
    const path = writeALawFile(lab.surroundings.folder)
    const page = await lab.freshPage()
    await page.engine.giveTake(path)
    const start = performance.now()
    const shown = await page.until(
      LIMIT_MS,
      ({ header, alerts }) => alerts.length > 0 || header.includes(basename(path)),
    )
    const seconds = ((performance.now() - start) / 1000).toFixed(1)
    if (!shown) return { ok: false, found: `neither in ${seconds} s` }
    const refusal = shown.alerts.join(' ')
    return {
      ok: true,
      found: refusal === '' ? `opened in ${seconds} s` : `refused in ${seconds} s: ${refusal}`,
    }
  },
}
