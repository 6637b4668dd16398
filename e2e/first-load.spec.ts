import { gzipSync } from 'node:zlib'
import { expect, type Response, test } from '@playwright/test'
import { expectFigures, openApp, watchPage } from './setup/app-page'
import { pageAtRest } from './setup/changes'

/** What the page and its workers may weigh together, the one that sings the demo among them, bytes after gzip. */
const MOST_BYTES = 180_000
/** Until the controls answer, ms after the page's HTML has come, from this computer. */
const MOST_MS = 1000

declare global {
  interface Window {
    /** Sum of all layout shifts that nobody's input caused, as the Layout Instability specification scores them. */
    shifted?: number
    /** When the controls first answered, ms after the HTML had come. */
    answeredAfterMs?: number
  }
}

test('little is fetched before a take is opened: the scripts of the page and its workers', async ({
  page,
}) => {
  const scripts = new Map<string, Promise<Buffer>>()
  const keep = (response: Response) => {
    if (/javascript/.test(response.headers()['content-type'] ?? ''))
      scripts.set(response.url(), response.body())
  }
  page.context().on('response', keep)
  const { foreign, errors } = watchPage(page)
  await page.goto('/')
  await expectFigures(page)
  // What comes later is not asked for any more: its body could come after the test has ended.
  page.context().off('response', keep)
  const sizes = await Promise.all(
    Array.from(scripts, async ([url, body]) => ({
      name: new URL(url).pathname,
      bytes: gzipSync(await body).length,
    })),
  )
  const names = sizes.map(({ name }) => name).join()
  // What workers run is among them.
  expect(names).toMatch(/index/)
  expect(names).toMatch(/bench\.worker/)
  expect(names).toMatch(/demo\.worker/)
  const total = sizes.reduce((sum, { bytes }) => sum + bytes, 0)
  expect(total, JSON.stringify(sizes)).toBeLessThan(MOST_BYTES)
  expect(foreign).toEqual([])
  expect(errors).toEqual([])
})

for (const width of [1440, 1024, 768, 360]) {
  test(`nothing moves while the page and the demo come in, at ${width} px`, async ({ page }) => {
    await page.setViewportSize({ width, height: 900 })
    await page.addInitScript(() => {
      window.shifted = 0
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries())
          window.shifted = (window.shifted ?? 0) + Reflect.get(entry, 'value')
      }).observe({ type: 'layout-shift', buffered: true })
    })
    await openApp(page)
    await pageAtRest(page)
    expect(await page.evaluate(() => window.shifted)).toBe(0)
  })
}

test('the controls answer within a second of the HTML', { tag: '@real-time' }, async ({ page }) => {
  await page.addInitScript(() => {
    const look = () => {
      const control = document.querySelector<HTMLInputElement>('main input[type="range"]')
      const [navigation] = performance.getEntriesByType('navigation')
      if (!control || !(navigation instanceof PerformanceNavigationTiming)) return requestAnimationFrame(look)
      window.answeredAfterMs = performance.now() - navigation.responseEnd
      return 0
    }
    requestAnimationFrame(look)
  })
  await page.goto('/')
  await page.waitForFunction(() => window.answeredAfterMs !== undefined)
  expect(await page.evaluate(() => window.answeredAfterMs)).toBeLessThan(MOST_MS)
  // Answering means that a change takes place, not that something is drawn.
  await page.getByRole('switch', { name: '3 Compressor' }).click()
  await expect(page.getByRole('button', { name: 'Undo: compressor off' })).toBeVisible()
})
