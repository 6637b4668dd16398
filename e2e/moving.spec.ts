import { expect, type Locator, test } from '@playwright/test'
import { openApp, watchPage } from './setup/app-page'

/** The pixels of a lane, as text that can be compared. */
function pixelsOf(lane: Locator): Promise<string> {
  return lane.evaluate((canvas) => (canvas instanceof HTMLCanvasElement ? canvas.toDataURL() : ''))
}

test('while a hand holds a control, the lanes behind it follow; the figures once it rests', async ({
  page,
}) => {
  const { errors } = watchPage(page)
  await page.setViewportSize({ width: 1440, height: 900 })
  await openApp(page)
  const lanes = [/, Compressor: max/, /, De-esser: max/].map((name) => page.getByRole('img', { name }))
  const integrated = page.getByRole('row', { name: /^Integrated/ })
  const [before, row] = [await Promise.all(lanes.map(pixelsOf)), await integrated.textContent()]
  const response = page
    .getByRole('img', { name: /response/i })
    .locator('path')
    .last()
  const curve = await response.getAttribute('d')

  const handle = page.getByRole('slider', { name: '2 Equaliser, band a' })
  const box = await handle.boundingBox()
  if (!box) throw new Error('no band to drag')
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  await page.mouse.move(x, y)
  await page.mouse.down()
  // From within the page, so that the hand never rests, however busy this machine is.
  const moving = await handle.evaluate(
    (element, [clientX, clientY]) => {
      let moves = 0
      return setInterval(() => {
        const at = { clientX: clientX + (moves++ % 2), clientY, pointerId: 1, bubbles: true }
        element.dispatchEvent(new PointerEvent('pointermove', at))
      }, 16)
    },
    [x + 40, y + 60] as const,
  )
  const haveMoved = async () => {
    const now = await Promise.all(lanes.map(pixelsOf))
    return now.map((pixels, k) => pixels !== before[k])
  }
  await expect.poll(haveMoved).toEqual([true, true])
  expect(await response.getAttribute('d')).not.toBe(curve)
  expect(await integrated.textContent()).toBe(row)
  await page.evaluate((timer) => clearInterval(timer), moving)
  await page.mouse.up()
  await expect(integrated).not.toHaveText(row ?? '')
  expect(errors).toEqual([])
})
