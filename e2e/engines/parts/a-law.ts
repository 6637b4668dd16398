import { basename } from 'node:path'
import { writeALawFile } from '../files'
import type { Part } from './part'

const LIMIT_MS = 10_000

/** A file that not every engine can decode is opened, or refused with words. */
export const aLaw: Part = {
  title: 'A-law WAV opened or refused in 10 s',
  async look(lab) {
    const path = writeALawFile(lab.surroundings.folder)
    const page = await lab.freshPage()
    await page.engine.giveTake(path)
    const start = performance.now()
    const isOpened = (words: string) => words.includes(basename(path))
    const header = () => page.engine.run(() => document.querySelector('header')?.textContent ?? '')
    while (performance.now() - start < LIMIT_MS) {
      const { alerts } = await page.shown()
      const seconds = ((performance.now() - start) / 1000).toFixed(1)
      if (alerts.length > 0) return { ok: true, found: `refused in ${seconds} s: ${alerts.join(' ')}` }
      if (isOpened(await header())) return { ok: true, found: `opened in ${seconds} s` }
    }
    return { ok: false, found: 'neither' }
  },
}
