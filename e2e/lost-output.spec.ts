import { expect, test } from '@playwright/test'
import { openApp } from './setup/app-page'
import { expectPlayed, followOutputs, type Loss, loseOutput, outputsSoFar } from './setup/outputs'

const SAID = 'The audio output stopped. Press play to restart it.'
const losses: readonly Loss[] = ['suspended', 'closed', 'frozen']
/** A clock that stands still is given three seconds while sound starts; then another output has to be opened. */
const REPLACED = { timeout: 20_000 }

for (const loss of losses) {
  test(`a real output that is ${loss} while it plays is replaced; a second loss is told of; play goes on where it stopped`, {
    tag: '@real-time',
  }, async ({ page }) => {
    await followOutputs(page)
    await openApp(page)
    const bar = page.getByRole('region', { name: 'Listening' })
    const playedFrom = async () => (await outputsSoFar(page)).playedFrom
    await page.keyboard.press('Space')
    await expect(bar.getByRole('button', { name: 'Stop' })).toBeVisible()
    await expect.poll(playedFrom).toHaveLength(1)
    await expectPlayed(page, 1.5)
    await loseOutput(page, loss)
    await expect.poll(playedFrom, REPLACED).toHaveLength(2)
    expect((await outputsSoFar(page)).states).toEqual(['closed', 'running'])
    await expect(page.getByText(SAID)).toHaveCount(0)
    await expect(bar.getByRole('button', { name: 'Stop' })).toBeVisible()
    const [, resumedAt = 0] = await playedFrom()
    // More than half a second in, less than the time that passed.
    expect(resumedAt).toBeGreaterThan(24_000)
    expect(resumedAt).toBeLessThan(20 * 48_000)
    await expectPlayed(page, 1.5)

    await loseOutput(page, loss)
    await expect(page.getByText(SAID)).toBeVisible(REPLACED)
    await expect(bar.getByRole('button', { name: 'Play' })).toBeVisible()
    expect((await outputsSoFar(page)).states).toEqual(['closed', 'closed'])

    await page.keyboard.press('Space')
    await expect(bar.getByRole('button', { name: 'Stop' })).toBeVisible()
    await expect.poll(playedFrom).toHaveLength(3)
    expect((await outputsSoFar(page)).states).toEqual(['closed', 'closed', 'running'])
    const [, , restartedAt = 0] = await playedFrom()
    // The replacement did play on from where it began.
    expect(restartedAt).toBeGreaterThan(resumedAt + 24_000)
    // It does go on, and nothing is said of it any more.
    await expect(page.getByText(SAID)).toHaveCount(0)
    await expectPlayed(page, 1)
    await expect(bar.getByRole('button', { name: 'Stop' })).toBeVisible()
  })
}

test('a real output that goes away while nothing plays is not worth a word, and play finds another', {
  tag: '@real-time',
}, async ({ page }) => {
  await followOutputs(page)
  await openApp(page)
  const bar = page.getByRole('region', { name: 'Listening' })
  await page.keyboard.press('Space')
  await expect(bar.getByRole('button', { name: 'Stop' })).toBeVisible()
  // Its output is there, and not only on its way.
  await expect.poll(async () => (await outputsSoFar(page)).playedFrom).toHaveLength(1)
  await page.keyboard.press('Space')
  await loseOutput(page, 'suspended')
  await expect.poll(async () => (await outputsSoFar(page)).states).toEqual(['closed'])
  await expect(page.getByText(SAID)).toHaveCount(0)
  await page.keyboard.press('Space')
  await expect(bar.getByRole('button', { name: 'Stop' })).toBeVisible()
  await expect.poll(async () => (await outputsSoFar(page)).states).toEqual(['closed', 'running'])
})
