import { readFileSync } from 'node:fs'
import { expect, type Page, test } from '@playwright/test'
import { HEADER_LIMIT_MS } from '../src/files/limits'
import { changedRecording, type GivenFile, giveTake, openApp, RECORDING } from './setup/app-page'

/** Any file is refused by then: no header is read for longer than its limit. */
const MOST_MS = HEADER_LIMIT_MS + 4000

/** A second of sound, in an M4A file whose bytes are changed by `change`. */
function changedM4a(name: string, change: (bytes: Buffer) => Buffer): GivenFile {
  const bytes = readFileSync(new URL('takes/second.m4a', import.meta.url))
  return { name, mimeType: 'audio/mp4', buffer: change(bytes) }
}

interface Case {
  readonly what: string
  readonly file: GivenFile
  readonly says: RegExp
}

const cases: readonly Case[] = [
  {
    what: 'a text file renamed to .wav',
    file: {
      name: 'lyrics.wav',
      mimeType: 'audio/wav',
      buffer: Buffer.from('Salt on the steps, and so on.\n'.repeat(40)),
    },
    says: /lyrics\.wav.* not /i,
  },
  {
    what: 'a truncated WAV',
    file: changedRecording('half.wav', (bytes) => bytes.subarray(0, bytes.length >> 1)),
    says: /half\.wav.* cut short/i,
  },
  {
    what: 'an empty file',
    file: { name: 'nothing.wav', mimeType: 'audio/wav', buffer: Buffer.alloc(0) },
    says: /nothing\.wav.* is empty/i,
  },
  {
    what: 'a WAV without a frame',
    file: changedRecording('silent.wav', (bytes) => {
      const header = Buffer.from(bytes.subarray(0, 44))
      header.writeUInt32LE(36, 4)
      header.writeUInt32LE(0, 40)
      return header
    }),
    says: /silent\.wav.* no sound/i,
  },
  {
    what: 'an M4A that was cut off before its index',
    file: changedM4a('part.m4a', (bytes) => bytes.subarray(0, bytes.length >> 1)),
    says: /part\.m4a.* no sound .* cut short/i,
  },
  {
    // Its table of chunks claims 3.3 thousand million samples in each: readers that believe it count for a minute.
    what: 'an M4A that would keep its reader busy for long',
    file: changedM4a('chunks.m4a', (bytes) => {
      bytes.writeUInt8(0xc4, bytes.indexOf('stsc') + 16)
      return bytes
    }),
    says: /chunks\.m4a.* took too long/i,
  },
]

test.describe('with a take open', () => {
  // One after another on the same page: each file has to leave it as it was. After a failure it is opened anew.
  test.describe.configure({ mode: 'default' })
  let page: Page

  test.beforeAll(async ({ browser }) => {
    page = await browser.newPage()
    await openApp(page)
    await giveTake(page, RECORDING)
    await expect(page.getByRole('banner')).toContainText('Front_Center.wav')
  })

  test.afterAll(() => page.close())

  for (const { what, file, says } of cases) {
    test(`${what} gets a message that names the file and says what to do, and the take before it stays`, async () => {
      await giveTake(page, file)
      const alert = page.getByRole('alert')
      await expect(alert).toContainText(says, { timeout: MOST_MS })
      // A second sentence says what to do.
      await expect(alert).toContainText(/\. (?:Export|Copy|Choose|Open|If|Check|Save)[^.]*/)
      await expect(page.getByRole('banner')).toContainText('Front_Center.wav')
      await alert.getByRole('button', { name: 'Dismiss' }).click()
      await expect(alert).toBeEmpty()
    })
  }
})

test('of three files dropped with a damaged take among them nothing is taken in, and each is named', async ({
  page,
}) => {
  await openApp(page)
  const header = await page.getByRole('banner').textContent()
  const files = [
    { name: 'cut\u202Etfosa.wav', buffer: readFileSync(RECORDING).subarray(0, 30_000) },
    { name: 'band.wav', buffer: readFileSync(RECORDING) },
    { name: 'spare.wav', buffer: readFileSync(RECORDING) },
  ]
  const given = files.map(({ name, buffer }) => ({ name, bytes: buffer.toString('base64') }))
  const dropped = await page.evaluateHandle((list) => {
    const transfer = new DataTransfer()
    for (const { name, bytes } of list)
      transfer.items.add(new File([Uint8Array.from(atob(bytes), (c) => c.charCodeAt(0))], name))
    return transfer
  }, given)
  await page.dispatchEvent('body', 'dragover', { dataTransfer: dropped })
  await page
    .getByRole('region', { name: 'Drop the take here' })
    .dispatchEvent('drop', { dataTransfer: dropped })
  const alert = page.getByRole('alert')
  await expect(alert).toContainText(/cuttfosa\.wav.* is cut short/)
  await expect(alert).toContainText(/band\.wav.* was not opened/)
  await expect(alert).toContainText(/spare\.wav.* was not opened/)
  expect(await page.getByRole('banner').textContent()).toBe(header)
  for (let left = 3; left > 0; left--) {
    await expect(page.getByRole('button', { name: 'Dismiss' })).toHaveCount(left + 1)
    await alert.getByRole('button', { name: 'Dismiss' }).first().click()
  }
  await expect(alert).toBeEmpty()
})

test('A-law and mu-law WAV files open', async ({ page }) => {
  await openApp(page)
  for (const [name, tag] of [
    ['a-law.wav', 6],
    ['mu-law.wav', 7],
  ] as const) {
    const buffer = Buffer.alloc(44 + 8000, 'RIFF\0\0\0\0WAVEfmt \x10\0\0\0\0\0\x01\0', 'latin1')
    buffer.writeUInt32LE(36 + 8000, 4)
    buffer.writeUInt16LE(tag, 20)
    buffer.writeUInt32LE(8000, 24)
    buffer.writeUInt32LE(8000, 28)
    buffer.writeUInt16LE(1, 32)
    buffer.writeUInt16LE(8, 34)
    buffer.write('data', 36)
    buffer.writeUInt32LE(8000, 40)
    await giveTake(page, { name, mimeType: 'audio/wav', buffer })
    await expect(page.getByRole('banner')).toContainText(name)
  }
  await expect(page.getByRole('alert')).toBeEmpty()
})
