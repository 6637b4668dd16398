import { expect, test } from '@playwright/test'
import { openBench } from './setup/bench-page'
import { followOutputs, type Loss, loseOutput, outputsSoFar } from './setup/outputs'

const SAID = 'Sound stopped on its way to the output. Press play to start it again.'
const losses: readonly Loss[] = ['suspended', 'closed', 'frozen']

for (const loss of losses) {
  test(`a real output that is ${loss} while it plays is told of, and play goes on where it stopped`, async ({
    page,
  }) => {
    await followOutputs(page)
    await openBench(page)
    const bar = page.getByRole('region', { name: 'Listening' })
    await page.keyboard.press('Space')
    await expect(bar.getByRole('button', { name: 'Stop' })).toBeVisible()
    await page.waitForTimeout(1500)
    await loseOutput(page, loss)
    await expect(page.getByText(SAID)).toBeVisible()
    await expect(bar.getByRole('button', { name: 'Play' })).toBeVisible()

    await page.keyboard.press('Space')
    await expect(bar.getByRole('button', { name: 'Stop' })).toBeVisible()
    await expect.poll(async () => (await outputsSoFar(page)).playedFrom.length).toBe(2)
    const { states, playedFrom } = await outputsSoFar(page)
    expect(states).toEqual(['closed', 'running'])
    // More than half a second in, less than the time that passed.
    expect(playedFrom[1]).toBeGreaterThan(24_000)
    expect(playedFrom[1]).toBeLessThan(10 * 48_000)
    // It does go on, and nothing is said of it any more.
    await expect(page.getByText(SAID)).toHaveCount(0)
    await page.waitForTimeout(1000)
    await expect(bar.getByRole('button', { name: 'Stop' })).toBeVisible()
  })
}

test('a real output that goes away while nothing plays is not worth a word, and play finds another', async ({
  page,
}) => {
  await followOutputs(page)
  await openBench(page)
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
