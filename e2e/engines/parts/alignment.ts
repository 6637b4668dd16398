import { readWav } from '../../../src/files/wav/wav-reader'
import type { AppPage } from '../app-page'
import { takeFile } from '../files'
import { keepSavedFiles, takeSavedFile } from '../page-look'
import { until } from '../within'
import type { Part } from './part'

/** For a take of a second to be decoded, measured or delivered on a machine that is busy, ms. */
const LIMIT_MS = 30_000
/** More than any encoder and decoder together put ahead of a sound, frames. */
const MOST_SHIFT = 3000
/** What is compared, frames: the middle of a second at 48 kHz. */
const COMPARED = { from: 12_000, to: 36_000 } as const

/** A take in a lossy format lies where its original does, and is as long. */
export const mp3Alignment: Part = alignment('second.mp3')
export const m4aAlignment: Part = alignment('second.m4a')

function alignment(file: string): Part {
  return {
    title: `${file} against second.flac`,
    async look(lab) {
      const page = await lab.freshPage()
      await page.engine.run(keepSavedFiles)
      await bypassAll(page)
      const original = await delivered(page, 'second.flac')
      const decoded = await delivered(page, file)
      const shift = shiftOf(decoded.samples, original.samples)
      const found = `${decoded.samples.length} of ${original.samples.length} frames, ${shift} late`
      const isAligned = shift === 0 && decoded.samples.length === original.samples.length
      // An engine whose decoding cannot be put right must be said to be off.
      const notice = decoded.notices.filter((words) => /\b(late|early|cut)\b/.test(words)).join(' ')
      return { ok: isAligned || notice !== '', found: notice === '' ? found : `${found}; says "${notice}"` }
    },
  }
}

async function bypassAll(page: AppPage): Promise<void> {
  await page.engine.run(() => {
    for (const stage of document.querySelectorAll<HTMLElement>(
      '[data-stage-id] [role="switch"][aria-checked="true"]',
    ))
      stage.click()
  })
}

/** The first channel of what is delivered of a take, and what is said about it when it has come in. */
async function delivered(
  page: AppPage,
  file: string,
): Promise<{ readonly samples: Float32Array; readonly notices: readonly string[] }> {
  await page.engine.giveTake(takeFile(file))
  const shown = await page.until(LIMIT_MS, ({ header, isSettled }) => isSettled && header.includes(file))
  if (!shown) throw new Error(`${file} is not taken in`)
  await page.pressByScript({ selector: 'button', begins: 'Deliver' })
  const save = { selector: 'dialog button', begins: 'Save' }
  const isThere = () => page.engine.run((target) => window.benchLook?.find(target) !== null, save)
  if (!(await until(LIMIT_MS, isThere, Boolean))) throw new Error('no sheet to deliver from')
  await page.pressByScript(save)
  const saved = await until(
    LIMIT_MS,
    () => page.engine.run(takeSavedFile),
    (content) => content !== null,
  )
  if (saved === null) throw new Error(`${file} is not delivered`)
  await page.pressByScript({ selector: 'dialog button', begins: 'Close' })
  const { sound } = readWav(Buffer.from(saved, 'base64'), file)
  return { samples: sound.channels[0] ?? new Float32Array(), notices: [...shown.alerts, ...shown.statuses] }
}

/** By how many frames `decoded` is later than `original`: where their product is largest. */
function shiftOf(decoded: Float32Array, original: Float32Array): number {
  let best = 0
  let highest = Number.NEGATIVE_INFINITY
  for (let shift = -MOST_SHIFT; shift <= MOST_SHIFT; shift++) {
    let product = 0
    for (let n = COMPARED.from; n < COMPARED.to; n++)
      product += (decoded[n + shift] ?? 0) * (original[n] ?? 0)
    if (product <= highest) continue
    highest = product
    best = shift
  }
  return best
}
