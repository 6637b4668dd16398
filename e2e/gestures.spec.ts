import { type CDPSession, expect, type Locator, type Page, test } from '@playwright/test'
import { openApp } from './setup/app-page'

interface Point {
  readonly x: number
  readonly y: number
}

/** The middle of something on the page. */
async function middleOf(target: Locator): Promise<Point> {
  await target.scrollIntoViewIfNeeded()
  const box = await target.boundingBox()
  if (!box) throw new Error('it is not seen')
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
}

test('the scale of the curve fits again after a band was undone under a held pointer', async ({ page }) => {
  await openApp(page)
  await page
    .locator('[data-stage-id]')
    .getByRole('button', { name: /^2 ?Equaliser/ })
    .click()
  await page.getByRole('button', { name: 'Add a band' }).click()
  const { x, y } = await middleOf(page.getByRole('slider', { name: '2 Equaliser, band c' }))
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x + 30, y + 10, { steps: 3 })
  for (const _ of ['drag', 'band']) await page.keyboard.press('Control+z')
  await expect(page.getByRole('slider', { name: '2 Equaliser, band c' })).toHaveCount(0)
  await page.mouse.up()
  await page.getByRole('textbox', { name: 'Band a, Gain, typed' }).fill('20')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('region', { name: 'Response' }).getByText('+24', { exact: true })).toBeVisible()
  const plot = await page.getByRole('img', { name: /^Combined magnitude response/ }).boundingBox()
  const handle = await page.getByRole('slider', { name: '2 Equaliser, band a' }).boundingBox()
  if (!plot || !handle) throw new Error('not all of it is seen')
  expect(handle.y).toBeGreaterThan(plot.y)
  expect(handle.y + handle.height).toBeLessThan(plot.y + plot.height / 2)
})

test('a stage dragged to another place leaves the selection alone', async ({ page }) => {
  await openApp(page)
  const stages = page.locator('[data-stage-id]')
  const [first, last] = [
    await middleOf(stages.nth(0)),
    await middleOf(stages.nth(3).getByRole('button').first()),
  ]
  await page.mouse.move(last.x, last.y)
  await page.mouse.down()
  await page.mouse.move(first.x, first.y, { steps: 5 })
  await page.mouse.up()
  await expect(stages.nth(0)).toContainText('De-esser')
  await expect(page.locator('[data-selected="true"]')).toHaveText(/^4 ?Compressor/)
})

test('a click selects all of a number, the next one places the caret, and a drag selects a part', async ({
  page,
}) => {
  await openApp(page)
  await page.getByRole('button', { name: /^3 ?Compressor/ }).click()
  const field = page.getByRole('textbox', { name: 'Threshold, typed' })
  const selection = () =>
    field.evaluate((input) =>
      input instanceof HTMLInputElement
        ? input.value.slice(input.selectionStart ?? 0, input.selectionEnd ?? 0)
        : null,
    )
  await field.click()
  expect(await selection()).toBe(await field.inputValue())
  await field.click()
  expect(await selection()).toBe('')
  await field.press('Escape')
  const { x, y } = await middleOf(field)
  await page.mouse.move(x + 20, y)
  await page.mouse.down()
  await page.mouse.move(x + 44, y, { steps: 4 })
  await page.mouse.up()
  expect((await selection())?.length).toBeLessThan((await field.inputValue()).length)
  expect((await selection())?.length).toBeGreaterThan(0)
})

test.describe('by touch at 360 px', () => {
  test.use({ viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true })

  /** One finger, or several, on the page: real touches, with all that the browser makes of them. */
  const touch = (session: CDPSession, type: 'touchStart' | 'touchMove' | 'touchEnd', ...points: Point[]) =>
    session.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: points.map((point, id) => ({ ...point, id })),
    })

  async function swipe(page: Page, from: Point, dx: number, dy: number): Promise<void> {
    const session = await page.context().newCDPSession(page)
    const steps = 12
    await touch(session, 'touchStart', from)
    for (let k = 1; k <= steps; k++)
      await touch(session, 'touchMove', { x: from.x + (dx * k) / steps, y: from.y + (dy * k) / steps })
    await touch(session, 'touchEnd')
    await session.detach()
  }

  async function compressor(page: Page) {
    await openApp(page)
    await page.getByRole('button', { name: /^3 ?Compressor/ }).tap()
    const slider = page.getByRole('slider', { name: 'Threshold', exact: true })
    const box = await slider.boundingBox()
    if (!box) throw new Error('it is not seen')
    const { y } = await middleOf(slider)
    return {
      field: page.getByRole('textbox', { name: 'Threshold, typed' }),
      low: { x: box.x + box.width * 0.3, y },
      width: box.width,
      undo: page.getByRole('button', { name: /^Undo: threshold/ }),
    }
  }

  test('a swipe upwards that begins on a slider scrolls the page and leaves the value alone', async ({
    page,
  }) => {
    const { field, low, undo } = await compressor(page)
    const before = await field.inputValue()
    const scrolled = await page.evaluate(() => window.scrollY)
    await swipe(page, low, 4, -160)
    await expect.poll(() => page.evaluate(() => window.scrollY)).toBeGreaterThan(scrolled + 80)
    expect(await field.inputValue()).toBe(before)
    await expect(undo).toHaveCount(0)
  })

  test('a swipe along a slider sets it as one change, wherever the finger goes on the way', async ({
    page,
  }) => {
    const { field, low, width } = await compressor(page)
    const before = await field.inputValue()
    const scrolled = await page.evaluate(() => window.scrollY)
    await swipe(page, low, width * 0.4, -20)
    await expect(field).toHaveValue(/^−2\d\.\d dBFS$/)
    expect(await field.inputValue()).not.toBe(before)
    expect(await page.evaluate(() => window.scrollY)).toBe(scrolled)
    await page.keyboard.press('Control+z')
    await expect(field).toHaveValue(before)
  })

  test('a tap on a slider sets it', async ({ page }) => {
    const { field, low } = await compressor(page)
    await page.touchscreen.tap(low.x, low.y)
    await expect(field).toHaveValue(/^−5\d\.\d dBFS$/)
  })

  test('the line of cards scrolls sideways, shows the selected one, and leads on to its settings', async ({
    page,
  }) => {
    await openApp(page)
    const line = page.getByRole('region', { name: 'Chain' }).getByRole('list')
    const scrolled = () => line.evaluate((list) => list.scrollLeft)
    await page.keyboard.press('[')
    await page.keyboard.press('[')
    await expect.poll(scrolled).toBe(0)
    const { x, y } = await middleOf(page.locator('[data-stage-id] button[aria-current]').first())
    await swipe(page, { x: x + 60, y }, -160, 2)
    await expect.poll(scrolled).toBeGreaterThan(80)
    await expect(page.locator('[data-drop]')).toHaveCount(0)
    await page.keyboard.press(']')
    await page.keyboard.press(']')
    await page.keyboard.press(']')
    const last = page.getByRole('button', { name: /^4 ?De-esser/ })
    await expect(last).toBeInViewport({ ratio: 1 })
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(360)
    // Pressed again it leads on to the stage.
    await page.evaluate(() => window.scrollTo(0, 0))
    await last.tap()
    await expect(page.getByRole('heading', { name: /De-esser/ })).toBeInViewport()
  })

  test('a finger moves the listening point along the line, and a stage by its number', async ({ page }) => {
    await openApp(page)
    const point = page.getByRole('slider', { name: 'Listening point' })
    await page.getByRole('button', { name: 'Hear up to here, after 1 Equaliser' }).tap()
    await expect(point).toHaveAttribute('aria-valuetext', 'after 1 Equaliser')
    const from = await middleOf(point)
    const next = await middleOf(page.getByRole('button', { name: 'Hear up to here, after 2 Equaliser' }))
    const moved = await middleOf(point)
    await swipe(page, moved, next.x - moved.x, 2)
    expect(from.y).toBeGreaterThan(0)
    await expect(point).toHaveAttribute('aria-valuetext', 'after 2 Equaliser')
    const [first, second] = [
      await middleOf(page.locator('[data-stage-id]').nth(0).getByText('1', { exact: true })),
      await middleOf(page.locator('[data-stage-id]').nth(1).getByText('2', { exact: true })),
    ]
    const begin = await middleOf(page.locator('[data-stage-id]').nth(1).getByText('2', { exact: true }))
    await swipe(page, begin, first.x - second.x, 0)
    await expect(page.getByRole('button', { name: /^Undo: 2 Equaliser earlier/ })).toBeVisible()
  })

  test('a second finger neither moves nor drops a stage that the first one drags', async ({ page }) => {
    await openApp(page)
    const names = page.locator('[data-stage-id] button[aria-current] > span:last-child')
    const order = ['Equaliser', 'Equaliser', 'Compressor', 'De-esser']
    await expect(names).toHaveText(order)
    await page.setViewportSize({ width: 1024, height: 740 })
    const stage = (kind: RegExp) => page.locator('[data-stage-id]').getByRole('button', { name: kind })
    const [first, elsewhere] = [
      await middleOf(stage(/^3 ?Compressor/)),
      await middleOf(stage(/^1 ?Equaliser/)),
    ]
    const session = await page.context().newCDPSession(page)
    const left = { x: first.x - 40, y: first.y }
    await touch(session, 'touchStart', first)
    for (const x of [first.x - 10, first.x - 20, left.x]) await touch(session, 'touchMove', { x, y: first.y })
    await touch(session, 'touchStart', left, elsewhere)
    await touch(session, 'touchMove', left, { x: elsewhere.x + 12, y: elsewhere.y })
    // A point that is left out is lifted: the second. The first is still down, over the place it came from.
    await touch(session, 'touchMove', left)
    await expect(names).toHaveText(order)
    await expect(page.locator('[data-drop="moving"]')).toHaveText(/Compressor/)
    await touch(session, 'touchEnd')
    await expect(page.locator('[data-drop]')).toHaveCount(0)
    await expect(names).toHaveText(order)
  })
})
