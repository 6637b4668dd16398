import { gzipSync } from 'node:zlib'
import { expect, type Page, type Response, test } from '@playwright/test'
import { expectFigures, openApp, watchPage } from './setup/app-page'
import { pageAtRest } from './setup/changes'

/** What the page may weigh until a take is opened (HTML, styles and scripts), bytes after gzip. */
const MOST_PAGE_BYTES = 125_000
/** What its workers may weigh until the demo is open and measured, bytes after gzip. */
const MOST_WORKER_BYTES = 50_000
/** After its controls are there, the page has asked for all it needs to start, ms. */
const SETTLED_MS = 1000
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

/** Collects what is fetched, until `stop`. */
function collectBodies(page: Page) {
  const bodies = new Map<string, Promise<Buffer>>()
  const keep = (response: Response) => {
    if (/html|css|javascript/.test(response.headers()['content-type'] ?? ''))
      bodies.set(new URL(response.url()).pathname, response.body())
  }
  page.context().on('response', keep)
  return {
    stop: () => page.context().off('response', keep),
    /** Bytes after gzip of all whose path is, or is not, that of a worker. */
    weigh: async (what: 'page' | 'workers') => {
      const sizes = new Map<string, number>()
      for (const [path, body] of bodies)
        if (/worker/.test(path) === (what === 'workers')) sizes.set(path, gzipSync(await body).length)
      return { paths: [...sizes.keys()].join(), total: [...sizes.values()].reduce((a, b) => a + b, 0), sizes }
    },
  }
}

test('little is fetched before a take is opened, by the page and by its workers', async ({ page }) => {
  let singDemo = () => {}
  const demoWanted = new Promise<void>((resolve) => {
    singDemo = resolve
  })
  await page.route(/\/demo\.worker-[^/]*\.js$/, async (route) => {
    await demoWanted
    await route.continue()
  })
  const { foreign, errors } = watchPage(page)
  const fetched = collectBodies(page)
  await page.goto('/')
  await expect(page.locator('main input[type="range"]').first()).toBeVisible()
  await page.waitForTimeout(SETTLED_MS)
  const ofPage = await fetched.weigh('page')
  expect(ofPage.paths).toMatch(/^\/,.*index.*\.js/)
  expect(ofPage.paths).toMatch(/index.*\.css/)
  expect(ofPage.total, JSON.stringify([...ofPage.sizes])).toBeLessThan(MOST_PAGE_BYTES)
  singDemo()
  await expectFigures(page)
  // What comes later is not asked for any more: its body could come after the test has ended.
  fetched.stop()
  const ofWorkers = await fetched.weigh('workers')
  expect(ofWorkers.paths).toMatch(/demo\.worker/)
  expect(ofWorkers.total, JSON.stringify([...ofWorkers.sizes])).toBeLessThan(MOST_WORKER_BYTES)
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
