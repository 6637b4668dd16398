import { expect, type Page, test } from '@playwright/test'
import { openApp, watchPage } from './setup/app-page'

/** Takes something away from the page's window before any of its scripts runs. */
async function without(page: Page, ...names: string[]): Promise<void> {
  await page.addInitScript((taken) => {
    for (const name of taken) Reflect.deleteProperty(window, name)
  }, names)
}

test('a page without workers says so in place of a blank', async ({ page }) => {
  await without(page, 'Worker')
  const { errors } = watchPage(page)
  await page.goto('/')
  await expect(page.getByRole('heading', { name: 'Evenhand' })).toBeVisible()
  await expect(page.getByText(/This browser gives the page no workers/)).toBeVisible()
  expect(errors).toEqual([])
})

const withoutSound = [
  { missing: 'AudioContext', names: ['AudioContext'] },
  { missing: 'AudioWorklet', names: ['AudioWorklet', 'AudioWorkletNode'] },
]
for (const { missing, names } of withoutSound) {
  test(`a page without ${missing} says that nothing can be played and what still works`, async ({ page }) => {
    await without(page, ...names)
    if (missing === 'AudioWorklet')
      await page.addInitScript(() => Reflect.deleteProperty(BaseAudioContext.prototype, 'audioWorklet'))
    const { errors } = watchPage(page)
    await openApp(page)
    const said = page.getByRole('alert').getByText(/nothing can be played.*Figures, curves and delivery/)
    await expect(said).toBeVisible()
    await page.getByRole('alert').getByRole('button', { name: 'Dismiss' }).click()
    await expect(said).toHaveCount(0)
    // Said again where somebody presses play all the same.
    await page.keyboard.press('Space')
    await expect(said).toBeVisible()
    await expect(page.getByRole('button', { name: 'Play' })).toBeVisible()
    expect(errors).toEqual([])
  })
}

test('a page whose script is missing says so', async ({ page }) => {
  await page.route(/\/assets\/index-[^/]*\.js/, (route) => route.fulfill({ status: 404, body: '' }))
  await page.goto('/')
  await expect(page.getByRole('heading', { name: 'Evenhand' })).toBeVisible()
  await expect(page.getByText(/Evenhand has not started/)).toBeVisible()
})

test('a page whose script throws says so', async ({ page }) => {
  await page.addInitScript(() => {
    Object.defineProperty(navigator, 'hardwareConcurrency', {
      get: () => {
        throw new Error('processors are not counted here')
      },
    })
  })
  await page.goto('/')
  await expect(page.getByText(/^Evenhand could not start: processors are not counted here/)).toBeVisible()
})

test.describe('without JavaScript', () => {
  test.use({ javaScriptEnabled: false })
  test('the page says what it needs', async ({ page }) => {
    await page.goto('/')
    await expect(page.getByText(/has not started. It needs JavaScript/)).toBeVisible()
  })
})

test('nothing is said about starting where the page starts', async ({ page }) => {
  await openApp(page)
  await expect(page.getByText(/has not started|could not start/)).toHaveCount(0)
})
