import { expect, type Page, test } from '@playwright/test'
import { mulberry32 } from '../test/setup/signals'
import { deliver, expectFigures, openApp } from './setup/app-page'

const KILLS = 20
const SEED = 7
/** Figures are right again within this, also with the machine busy, ms (1800 at most when written). */
const RIGHT_AGAIN_MS = 10_000

declare global {
  interface Window {
    /** Ends one of the page's workers as the browser does when it needs the memory: nobody is told. */
    killWorker?: (share: number) => void
    /** The next delivery's worker is to die a moment after it was asked. */
    killsDelivery?: boolean
  }
}

/** Lets a test get at the workers that the page starts. */
async function followWorkers(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const started: Worker[] = []
    const { Worker } = window
    window.Worker = class extends Worker {
      constructor(url: string | URL, options?: WorkerOptions) {
        super(url, options)
        started.push(this)
      }

      override postMessage(
        message: unknown,
        options: Transferable[] | StructuredSerializeOptions = [],
      ): void {
        super.postMessage(message, Array.isArray(options) ? { transfer: options } : options)
        const isDelivery = typeof message === 'object' && message && 'kind' in message
        if (!window.killsDelivery || !isDelivery || message.kind !== 'delivery') return
        window.killsDelivery = false
        setTimeout(() => super.terminate(), 5)
      }

      override terminate(): void {
        started.splice(started.indexOf(this), 1)
        super.terminate()
      }
    }
    window.killWorker = (share) => {
      const worker = started[Math.floor(share * started.length)]
      if (worker) Worker.prototype.terminate.call(worker)
    }
  })
}

/** The figures of both sides. */
const figures = (page: Page) => page.getByRole('table').first().textContent()

/** Sets the compressor's threshold to one of its steps. */
async function setThreshold(page: Page, value: number): Promise<void> {
  await page.locator('input[type="range"][aria-label="Threshold"]').fill(String(value))
}

const upToDate = (page: Page) => page.locator('table[aria-busy="false"]').first()

test('figures are right again after a worker dies at any moment', async ({ page, context }, info) => {
  const random = mulberry32(SEED)
  const values = Array.from({ length: KILLS }, () => 0.2 + 0.6 * random()).map((share) => share.toFixed(3))
  const undisturbed = await context.newPage()
  await openApp(undisturbed)
  await undisturbed.locator('[data-stage-id] button[aria-current]', { hasText: 'Compressor' }).click()
  const expected: (string | null)[] = []
  for (const value of values) {
    await setThreshold(undisturbed, Number(value))
    await upToDate(undisturbed).waitFor()
    expected.push(await figures(undisturbed))
  }
  await undisturbed.close()

  await followWorkers(page)
  await openApp(page)
  await page.locator('[data-stage-id] button[aria-current]', { hasText: 'Compressor' }).click()
  const times: number[] = []
  for (const [k, value] of values.entries()) {
    const change = () => setThreshold(page, Number(value))
    const kill = () => page.evaluate((share) => window.killWorker?.(share), random())
    const [first, second] = random() < 0.5 ? [kill, change] : [change, kill]
    await first()
    await page.waitForTimeout(300 * random())
    await second()
    const from = Date.now()
    await expect
      .poll(async () => ((await upToDate(page).count()) > 0 ? await figures(page) : 'being worked out'), {
        intervals: [20],
        timeout: RIGHT_AGAIN_MS,
      })
      .toBe(expected[k])
    times.push(Date.now() - from)
  }
  info.annotations.push({ type: 'right again after, ms', description: times.join(' ') })
})

test('a delivery under way when its worker dies is finished', async ({ page }) => {
  await followWorkers(page)
  await openApp(page)
  const undisturbed = await deliver(page)
  await page.evaluate(() => {
    window.killsDelivery = true
  })
  expect((await deliver(page)).sound).toEqual(undisturbed.sound)
  expect(await page.evaluate(() => window.killsDelivery)).toBe(false)
  await expectFigures(page)
})
