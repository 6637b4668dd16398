import { readFileSync } from 'node:fs'
import { expect, type Page, test } from '@playwright/test'
import { bypassed, chainOf, measure, renderChain, type Sound } from '../src/core'
import { startingChain } from '../src/demo'
import { readWav } from '../src/files/wav/wav-reader'
import {
  deliver,
  differenceDbfs,
  expectFigures,
  giveTake,
  openApp,
  RECORDING,
  watchPage,
} from './setup/app-page'

/** 24 bits hold steps of -138 dB; what is asked for is -100. */
const DELIVERY_TOLERANCE_DBFS = -100

function channel(sound: Sound): Float32Array {
  return sound.channels[0] ?? new Float32Array()
}

function stage(page: Page, name: string) {
  return page.getByRole('listitem').filter({ has: page.getByRole('switch', { name }) })
}

test('a recording is taken in, judged, reordered and delivered, and nothing leaves the page', async ({
  page,
}) => {
  const { foreign, errors } = watchPage(page)
  const recording = readWav(readFileSync(RECORDING), 'Front_Center.wav')
  await openApp(page)
  await giveTake(page, RECORDING)

  // What it is: as its header says, read here by other code than the page's figures come from.
  const header = readFileSync(RECORDING)
  const sampleRate = header.readUInt32LE(24)
  const seconds = header.readUInt32LE(40) / header.readUInt32LE(28)
  const banner = page.getByRole('banner')
  await expect(banner).toContainText('Front_Center.wav')
  await expect(banner).toContainText(`${sampleRate / 1000} kHz`)
  await expect(banner).toContainText(`0:0${seconds.toFixed(1)}`)
  await expect(banner).toContainText('mono')
  await expect(banner).toContainText('16-bit WAV')
  const loudness = measure(recording.sound).integratedLufs ?? Number.NaN
  await expect(banner).toContainText(`${loudness.toFixed(1).replace('-', '\u2212')} LUFS`)

  // The compressor off and on again.
  const compressor = page.getByRole('switch', { name: '3 Compressor' })
  await compressor.click()
  await expect(compressor).toHaveAttribute('aria-checked', 'false')
  await expect(page.getByRole('button', { name: 'Undo: compressor off' })).toBeVisible()
  await compressor.click()
  await expect(compressor).toHaveAttribute('aria-checked', 'true')

  // The de-esser in front of the compressor.
  await stage(page, '4 De-esser')
    .getByRole('button', { name: /^4? ?De-esser/ })
    .first()
    .click()
  await page.getByRole('button', { name: 'Move De-esser earlier' }).click()
  await expect(page.getByRole('switch', { name: '3 De-esser' })).toBeVisible()
  await expectFigures(page)

  const [first, second, third, fourth] = startingChain().stages
  if (!first || !second || !third || !fourth) throw new Error('the starting chain has four stages')
  const chain = chainOf([first, second, fourth, third])
  const delivered = await deliver(page)
  expect(delivered.fileName).toBe('Front_Center - evenhand, 24-bit.wav')
  expect(delivered.sound.sampleRate).toBe(sampleRate)
  expect(channel(delivered.sound)).toHaveLength(channel(recording.sound).length)
  const expected = channel(renderChain(recording.sound, chain).sound)
  expect(differenceDbfs(channel(delivered.sound), expected)).toBeLessThan(DELIVERY_TOLERANCE_DBFS)
  // The check can fail: the chain in its old order is another sound.
  const otherOrder = channel(renderChain(recording.sound, startingChain()).sound)
  expect(differenceDbfs(channel(delivered.sound), otherOrder)).toBeGreaterThan(DELIVERY_TOLERANCE_DBFS)

  expect(foreign).toEqual([])
  expect(errors).toEqual([])
})

test('the page asks before it goes while the chain holds work that is in no file', async ({ page }) => {
  await openApp(page)
  const asked: string[] = []
  page.on('dialog', async (dialog) => {
    asked.push(dialog.type())
    await dialog.accept()
  })
  await page.reload()
  await expectFigures(page)
  expect(asked).toEqual([])
  await page.getByRole('switch', { name: '3 Compressor' }).click()
  await deliver(page)
  await page.reload()
  await expectFigures(page)
  expect(asked).toEqual([])
  await page.getByRole('switch', { name: '3 Compressor' }).click()
  await page.reload()
  expect(asked).toEqual(['beforeunload'])
})

test('with every stage off the delivered file holds the samples of the take', async ({ page }) => {
  const recording = readWav(readFileSync(RECORDING), 'Front_Center.wav')
  await openApp(page)
  await giveTake(page, RECORDING)
  await expect(page.getByRole('banner')).toContainText('Front_Center.wav')
  for (const name of ['1 Equaliser', '2 Equaliser', '3 Compressor', '4 De-esser']) {
    await page.getByRole('switch', { name }).click()
  }
  const delivered = await deliver(page)
  expect(channel(delivered.sound)).toEqual(channel(recording.sound))
  expect(bypassed(startingChain()).stages).toHaveLength(4)
})
