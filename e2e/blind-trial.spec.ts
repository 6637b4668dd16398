import { readFileSync } from 'node:fs'
import { basename } from 'node:path'
import { expect, type Page, test } from '@playwright/test'
import {
  expectFigures,
  type GivenFile,
  giveTake,
  openApp,
  RECORDING,
  shortRecording,
  watchPage,
} from './setup/app-page'
import { everythingShown, pageAtRest, recordChanges, takeChanges } from './setup/changes'
import { hideBehindX, takeToldSides } from './setup/hidden-sides'
import { playUntil, stepOutput } from './setup/stepped-output'

// For the recorder at the stepped output.
test.use({ bypassCSP: true })

/** It is played through again and again; a side counts as heard after half a second. */
const SHORT_TAKE = shortRecording('words.wav', 0.6)

const PLAY = 'footer button[aria-label="Play"]'
const STOP = 'footer button[aria-label="Stop"]'
/** The second answer, once it can be chosen. */
const ANSWER = 'input[aria-keyshortcuts="ArrowRight"]:enabled'
/** Sound that a whole trial may take, and more, seconds. */
const TRIAL_SECONDS = 120

/** Waits for the button that stops, closely: what is played may be short. */
async function expectPlaying(page: Page): Promise<void> {
  await page.waitForFunction((it) => document.querySelector(it), STOP, { polling: 20 })
}

/** The bench with a short recording on it that was played once: whatever loads with the first sound is there. */
async function openPlayed(page: Page, take: string | GivenFile = SHORT_TAKE): Promise<void> {
  await openApp(page)
  await giveTake(page, take)
  await expect(page.getByRole('banner').first()).toContainText(
    typeof take === 'string' ? basename(take) : take.name,
  )
  await expectFigures(page)
  await playThrough(page, ['Space'])
}

/** Presses keys that make the take begin, and waits until it has ended and the page has come to rest. */
async function playThrough(page: Page, keys: readonly string[]): Promise<void> {
  // Looked for from before: on a busy machine so short a take could be over by a first look after the keys.
  const begun = expectPlaying(page)
  for (const key of keys) await page.keyboard.press(key)
  await begun
  await playUntil(page, PLAY)
  await pageAtRest(page)
}

async function begin(page: Page): Promise<void> {
  await page.keyboard.press('t')
  const button = page.getByRole('button', { name: 'Begin' })
  await expect(button).toBeEnabled()
  await button.focus()
  await page.keyboard.press('Enter')
  await expect(page.getByRole('heading', { name: 'Round 1 of 16' })).toBeFocused()
}

/** Listens to X until it can be answered, again where the take ends before. */
async function hearX(page: Page): Promise<void> {
  await expect(async () => {
    await page.keyboard.press('3')
    await playUntil(page, `${ANSWER}, ${PLAY}`)
    await expect(page.locator(ANSWER)).toHaveCount(1, { timeout: 1 })
  }).toPass({ intervals: [0] })
}

/** Listens to X and to both known sides over two rounds, and keeps all that could be seen meanwhile. */
async function seenWhenXIs(page: Page, processed: boolean) {
  await hideBehindX(page, processed)
  await stepOutput(page, TRIAL_SECONDS)
  await openPlayed(page)
  await begin(page)
  await recordChanges(page)
  const seen: string[][] = []
  const told: string[][] = []
  for (const keys of [['3'], ['1'], ['3'], ['2'], ['3', 'ArrowRight'], ['Enter', '3']]) {
    await takeToldSides(page)
    await playThrough(page, keys)
    seen.push(await takeChanges(page), await everythingShown(page))
    told.push(await takeToldSides(page))
  }
  return { seen, heardX: told[0]?.at(-1), heardWithout: told[1]?.at(-1), heardWith: told[3]?.at(-1) }
}

test('nothing on the page tells what X is: text, attributes, accessibility, changes while it plays', async ({
  browser,
}) => {
  const pages = [await browser.newPage(), await browser.newPage()] as const
  const [one, other] = await Promise.all([seenWhenXIs(pages[0], true), seenWhenXIs(pages[1], false)])
  // They did hear different things.
  expect(one).toMatchObject({ heardX: 'processed', heardWithout: 'bypassed', heardWith: 'processed' })
  expect(other).toMatchObject({ heardX: 'bypassed', heardWithout: 'bypassed', heardWith: 'processed' })
  for (const [index, seen] of one.seen.entries()) expect(other.seen[index]).toEqual(seen)
  // The record can tell one moment from another: without from X by what is chosen, playing from rest.
  expect(one.seen[1]).not.toEqual(one.seen[3])
  expect(one.seen[0]?.join()).toContain('Stop')
})

test('a whole run by keyboard, without a request, ends in a result and a table', async ({ page }) => {
  const { errors } = watchPage(page)
  await hideBehindX(page, true)
  await stepOutput(page, TRIAL_SECONDS)
  await openPlayed(page, RECORDING)
  await begin(page)
  const requests: string[] = []
  page.on('request', (request) => requests.push(request.url()))
  for (let round = 1; round <= 16; round++) {
    await expect(page.getByRole('heading', { name: `Round ${round} of 16` })).toBeFocused()
    // An answer before X was heard is not taken.
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('Enter')
    await hearX(page)
    await page.keyboard.press(round <= 12 ? 'ArrowRight' : 'ArrowLeft')
    await page.keyboard.press('Enter')
  }
  const dialog = page.getByRole('dialog')
  await expect(dialog.getByRole('heading', { name: '12 of 16 right' })).toBeVisible()
  await expect(dialog).toContainText('better 4 % of the time (exact one-sided test).')
  expect(requests).toEqual([])

  const downloading = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save as CSV' }).click()
  const table = readFileSync(await (await downloading).path(), 'utf8')
  expect(table.split('\r\n')).toHaveLength(18)
  expect(table).toContain(
    'Front_Center.wav,the whole chain,without,with,X is one of the two,16,finished,12,0.0384',
  )
  expect(errors).toEqual([])
})

test('at a real output Escape asks first, a second one does not slip through, and what is stopped counts as abandoned', {
  tag: '@real-time',
}, async ({ page }) => {
  await openPlayed(page)
  const pageBefore = await page.locator('main').ariaSnapshot()
  const barBefore = await page.getByRole('region', { name: 'Listening' }).ariaSnapshot()
  await begin(page)
  await hearX(page)
  for (let press = 0; press < 3; press++) await page.keyboard.press('Escape')
  const stay = page.getByRole('button', { name: 'Continue' })
  await expect(stay).toBeFocused()
  await page.keyboard.press('Enter')
  await expect(page.getByRole('heading', { name: 'Round 1 of 16' })).toBeFocused()
  // Nothing can be changed meanwhile.
  await page.keyboard.press('Control+z')
  await page.keyboard.press('m')
  await page.keyboard.press('Escape')
  await page.getByRole('button', { name: 'Quit trial' }).click()
  await expect(page.getByRole('heading', { name: 'Abandoned after 0 of 16 rounds' })).toBeVisible()
  await page.keyboard.press('Escape')
  await expect(page.getByRole('dialog')).toHaveCount(0)
  // The page is as it was.
  expect(await page.locator('main').ariaSnapshot()).toBe(pageBefore)
  expect(await page.getByRole('region', { name: 'Listening' }).ariaSnapshot()).toBe(barBefore)
  await expect(page.getByRole('checkbox', { name: /^matched/ })).toBeChecked()
  await page.keyboard.press('t')
  await expect(page.getByText('1 started: 0 finished, 1 abandoned.')).toBeVisible()
})
