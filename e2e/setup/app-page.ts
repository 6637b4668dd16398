import { readFileSync } from 'node:fs'
import { type Download, expect, type Page } from '@playwright/test'
import { type ReadWav, readWav } from '../../src/files/wav/wav-reader'
import { ORIGIN } from './port'
import { provideRecordedDemo } from './recorded-demo'

/** Spoken words at 48 kHz, mono, 16-bit: Debian's alsa-utils. */
export const RECORDING = '/usr/share/sounds/alsa/Front_Center.wav'

/** A file as the page's file inputs take it. */
export interface GivenFile {
  readonly name: string
  readonly mimeType: string
  readonly buffer: Buffer
}

/** Opens the built app, with a recording of the demo, and waits until its figures are in. */
export async function openApp(page: Page): Promise<void> {
  await provideRecordedDemo(page)
  await page.goto('/')
  await expect(page.getByRole('heading', { name: 'Figures' })).toBeVisible()
  await expectFigures(page)
}

/** Waits until the table of numbers has figures and nothing is being worked out. */
export async function expectFigures(page: Page): Promise<void> {
  const integrated = page.getByRole('row', { name: /^Integrated/ }).getByRole('cell')
  // Looked for often: nearly every test waits for it.
  await expect
    .poll(async () => (await integrated.allTextContents())[0], { intervals: [50], timeout: 30_000 })
    .toMatch(/\d/)
}

/** Keeps two versions of the chain and compares a band: all that the listening bar can be asked to hold. */
export async function keepTwoAndCompareBand(page: Page): Promise<void> {
  for (const _ of ['A', 'B']) await page.keyboard.press('k')
  await page
    .getByRole('button', { name: /^1 ?Equaliser/ })
    .first()
    .click()
  await page.getByRole('button', { name: 'Compare band b with its bypass' }).click()
}

/** Opens what is rarely typed: position and loop. */
export async function openTimes(page: Page): Promise<void> {
  await page.getByRole('button', { name: /^(Times|Loop \d)/ }).click()
}

/** Types the ends of a loop, seconds. */
export async function typeLoop(page: Page, from: number, to: number): Promise<void> {
  await openTimes(page)
  const loop = page.getByRole('group', { name: 'Loop' })
  for (const [name, seconds] of [
    ['Loop from', from],
    ['to', to],
  ] as const) {
    const field = loop.getByLabel(name, { exact: true })
    await field.fill(String(seconds))
    await field.press('Enter')
    await field.blur()
  }
}

/** Gives the page a take by its file input, as the file chooser would. */
export async function giveTake(page: Page, file: string | GivenFile): Promise<void> {
  await page.locator('input[data-role="take"]').setInputFiles(typeof file === 'string' ? file : { ...file })
}

/** A WAV file made of `bytes` of a recording, changed by `change`. */
export function changedRecording(name: string, change: (bytes: Buffer) => Buffer): GivenFile {
  return { name, mimeType: 'audio/wav', buffer: change(readFileSync(RECORDING)) }
}

/** The first `seconds` of the recording. */
export function shortRecording(name: string, seconds: number): GivenFile {
  const header = 44
  return changedRecording(name, (bytes) => {
    const length = seconds * bytes.readUInt32LE(28)
    bytes.writeUInt32LE(header - 8 + length, 4)
    bytes.writeUInt32LE(length, header - 4)
    return bytes.subarray(0, header + length)
  })
}

/** Delivers with the format as it is, and reads back the file. */
export async function deliver(page: Page): Promise<ReadWav & { readonly fileName: string }> {
  await page.getByRole('button', { name: 'Deliver' }).click()
  const downloading = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save file' }).click()
  const download: Download = await downloading
  const fileName = download.suggestedFilename()
  await expect(page.getByText(`Saved as ${fileName}.`)).toBeVisible()
  await page.keyboard.press('Escape')
  return { ...readWav(readFileSync(await download.path()), fileName), fileName }
}

/** The largest difference between two channels, in dBFS; -Infinity where they are the same. */
export function differenceDbfs(a: Float32Array, b: Float32Array): number {
  expect(a.length).toBe(b.length)
  return 20 * Math.log10(a.reduce((most, value, n) => Math.max(most, Math.abs(value - (b[n] ?? 0))), 0))
}

/** Fails on every request that leaves the page's own origin, and on every error the page reports. */
export function watchPage(page: Page): { readonly foreign: string[]; readonly errors: string[] } {
  const foreign: string[] = []
  const errors: string[] = []
  page.on('request', (request) => {
    const url = new URL(request.url())
    const own = url.origin === ORIGIN || url.protocol === 'data:' || url.protocol === 'blob:'
    if (!own) foreign.push(request.url())
  })
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') errors.push(message.text())
  })
  page.on('pageerror', (error) => errors.push(error.message))
  return { foreign, errors }
}
