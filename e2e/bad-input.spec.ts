import { expect, test } from '@playwright/test'
import { changedRecording, type GivenFile, giveTake, openBench, RECORDING } from './setup/bench-page'

const cases: { readonly what: string; readonly file: GivenFile; readonly says: RegExp }[] = [
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
]

for (const { what, file, says } of cases) {
  test(`${what} gets a message that names the file and says what to do, and the take before it stays`, async ({
    page,
  }) => {
    await openBench(page)
    await giveTake(page, RECORDING)
    await expect(page.getByRole('banner')).toContainText('Front_Center.wav')
    await giveTake(page, file)
    const alert = page.getByRole('alert')
    await expect(alert).toContainText(says)
    // A second sentence says what to do.
    await expect(alert).toContainText(/\. (?:Export|Copy|Choose|Open|If|Check|Save)[^.]*/)
    await expect(page.getByRole('banner')).toContainText('Front_Center.wav')
    await page.getByRole('button', { name: 'Dismiss' }).click()
    await expect(alert).toBeEmpty()
  })
}
