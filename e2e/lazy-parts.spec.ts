import { expect, type Page, test } from '@playwright/test'
import { deliver, giveTake, openApp, RECORDING } from './setup/app-page'

/** Has the server answer 404 to whatever `pattern` matches until `serve` is called: a deploy has moved the file. */
async function withhold(page: Page, pattern: RegExp): Promise<{ serve(): Promise<void>; refused: string[] }> {
  const refused: string[] = []
  await page.context().route(pattern, (route) => {
    refused.push(new URL(route.request().url()).pathname)
    return route.fulfill({ status: 404, contentType: 'text/plain', body: 'not found' })
  })
  return { refused, serve: () => page.context().unroute(pattern) }
}

for (const [what, pattern] of [
  ['script', /deliver-sheet-[^/]*\.js/],
  ['style sheet', /deliver-sheet-[^/]*\.css/],
] as const) {
  test(`delivery comes back after its ${what} could not be fetched`, async ({ page }) => {
    const { serve, refused } = await withhold(page, pattern)
    await openApp(page)
    await page.getByRole('button', { name: 'Deliver' }).click()
    const alert = page.getByRole('alert').filter({ hasText: 'could not be loaded' })
    await expect(alert).toBeVisible()
    await expect(alert).not.toContainText('undo')
    await expect(alert).not.toContainText('/assets/')
    expect(refused.length).toBeGreaterThan(0)
    // Still not there: said again, and not a blank.
    const refusedBefore = refused.length
    await alert.getByRole('button', { name: 'Try again' }).click()
    await expect.poll(() => refused.length).toBeGreaterThan(refusedBefore)
    await expect(alert).toBeVisible()
    await serve()
    await alert.getByRole('button', { name: 'Try again' }).click()
    const sheet = page.getByRole('dialog', { name: 'Deliver' })
    await expect(sheet.getByRole('button', { name: 'Save file' })).toBeVisible()
    await expect(alert).toHaveCount(0)
    // With its styles.
    await expect(sheet.getByRole('group', { name: 'Format' })).toHaveCSS('display', 'flex')
    await page.keyboard.press('Escape')
    expect((await deliver(page)).fileName).toMatch(/\.wav$/)
  })
}

for (const [what, pattern, role, name] of [
  ['the take', /take-lanes-[^/]*\.js/, 'slider', 'Position in the take'],
  ['the response', /response-plot-[^/]*\.js/, 'img', /magnitude response/],
] as const) {
  test(`${what} is drawn after what draws it could not be fetched`, async ({ page }) => {
    const { serve } = await withhold(page, pattern)
    await openApp(page)
    const alert = page.getByRole('alert').filter({ hasText: 'could not be loaded' })
    await expect(alert).toBeVisible()
    await serve()
    await alert.getByRole('button', { name: 'Try again' }).click()
    await expect(page.getByRole(role, { name })).toBeVisible()
    await expect(alert).toHaveCount(0)
  })
}

test('a sheet that could not be fetched can be closed and opened again', async ({ page }) => {
  const { serve } = await withhold(page, /keys-sheet-[^/]*\.js/)
  await openApp(page)
  await page.keyboard.press('?')
  const alert = page.getByRole('alert').filter({ hasText: 'could not be loaded' })
  await alert.getByRole('button', { name: 'Close' }).click()
  await expect(alert).toHaveCount(0)
  await serve()
  await page.keyboard.press('?')
  await expect(page.getByRole('dialog', { name: 'Keys' })).toBeVisible()
})

test('what writes files is fetched again', async ({ page }) => {
  const { serve } = await withhold(page, /wav-writer-[^/]*\.js/)
  await openApp(page)
  await page.getByRole('button', { name: 'Deliver' }).click()
  await page.getByRole('button', { name: 'Save file' }).click()
  const alert = page.getByText(/could not be loaded/)
  await expect(alert).toBeVisible()
  await expect(alert).not.toContainText('/assets/')
  await serve()
  const downloading = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save file' }).click()
  await downloading
  await expect(alert).toHaveCount(0)
})

for (const [what, pattern] of [
  ['decoder', /decode-[^/]*\.js/],
  ['worker', /file\.worker-[^/]*\.js/],
] as const) {
  test(`a take opens after the ${what} that reads it could not be fetched`, async ({ page }) => {
    const { serve } = await withhold(page, pattern)
    await openApp(page)
    await giveTake(page, RECORDING)
    const alert = page.getByRole('alert').filter({ hasText: 'Front_Center.wav' })
    await expect(alert).toContainText('could not be loaded')
    await expect(alert).not.toContainText('/assets/')
    await serve()
    await giveTake(page, RECORDING)
    await expect(page.getByText('Front_Center.wav', { exact: false }).first()).toBeVisible()
    await expect(alert).toHaveCount(0)
  })
}

test('the demo is sung after its worker could not be fetched', async ({ page }) => {
  const { serve } = await withhold(page, /demo\.worker-[^/]*\.js/)
  await page.goto('/')
  await expect(page.getByRole('alert')).toContainText('could not be loaded')
  await serve()
  await page.getByRole('button', { name: /demo/i }).first().click()
  await expect(
    page
      .getByRole('row', { name: /^Integrated/ })
      .getByRole('cell')
      .first(),
  ).toHaveText(/\d/)
})

test('what is fetched later is there before it is asked for', async ({ page }) => {
  await openApp(page)
  const fetched = () =>
    page.evaluate(() => performance.getEntriesByType('resource').map(({ name }) => name.replace(/.*\//, '')))
  const later = [
    /^stage-picture-.*\.js/,
    /^decode-/,
    /^deliver-sheet-.*\.css/,
    /^trial-sheet-.*\.js/,
    /^terms-sheet-/,
  ]
  for (const part of later)
    await expect.poll(async () => (await fetched()).filter((name) => part.test(name))).not.toEqual([])
  // Opened from then on without the network.
  await page.context().setOffline(true)
  await page.getByRole('button', { name: 'Deliver' }).click()
  await expect(page.getByRole('dialog', { name: 'Deliver' })).toBeVisible()
})
