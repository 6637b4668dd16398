import { fileURLToPath } from 'node:url'
import { expect } from '@playwright/test'
import { expectFigures, giveTake, keepTwoAndCompareBand, openApp, RECORDING } from './setup/app-page'
import { test } from './setup/shared-app'

const WIDTHS = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
  { width: 768, height: 1024 },
  { width: 360, height: 740 },
]

/** Nothing stands nearer to the sides of the window, CSS pixels. */
const MARGIN_PX = 16

/** The picture in the README: with `PICTURES=1` in the environment it is taken anew. */
const README_PICTURE = fileURLToPath(new URL('../public/pictures/bench.png', import.meta.url))

test('in use, at every size, light and dark, nothing is cut off sideways', async ({ page }, info) => {
  await page.getByRole('switch', { name: '4 De-esser' }).click()
  await page
    .getByRole('button', { name: /^3? ?Compressor/ })
    .first()
    .click()
  await page.keyboard.press('Space')
  const levels = page.getByTitle(/^At the output: peak, limited to −1 dBFS/)
  await expect(levels).toHaveText(/dBFS, .* LUFS$/)
  await expectFigures(page)
  for (const viewport of WIDTHS) {
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.setViewportSize(viewport)
      await page.emulateMedia({ colorScheme })
      await expect(page.getByRole('button', { name: /^Stop/ })).toBeVisible()
      const shot = `${viewport.width}-${colorScheme}`
      await page.screenshot({ path: info.outputPath(`${shot}.png`), fullPage: true })
      const taken = await page.evaluate(() => document.documentElement.scrollWidth)
      expect.soft(taken, shot).toBeLessThanOrEqual(viewport.width)
      if (process.env.PICTURES && shot === '1440-light') await page.screenshot({ path: README_PICTURE })
    }
  }
})

test('what is filled with ink stays so under the pointer', async ({ page }) => {
  for (const name of ['Deliver', 'Play']) {
    const button = page.getByRole('button', { name, exact: true })
    const paper = () => button.evaluate((element) => getComputedStyle(element).backgroundColor)
    const before = await paper()
    await button.hover()
    expect(await paper(), name).toBe(before)
  }
  await page.mouse.move(0, 0)
})

test('zoomed to four times its size nothing is cut off sideways, and the bar does not fill the window', async ({
  page,
}, info) => {
  // WCAG 2.2, 1.4.10: no scrolling in two directions at a width of 320 and a height of 256 CSS pixels.
  await page.setViewportSize({ width: 320, height: 256 })
  await page.screenshot({ path: info.outputPath('320.png'), fullPage: true })
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320)
  await expect(page.getByRole('region', { name: 'Listening' })).not.toBeInViewport()
})

test('at twice the text size nothing is cut off sideways, and nothing lies over anything else', async ({
  browser,
}, info) => {
  // WCAG 2.2, 1.4.4: text can be made twice as large.
  const page = await browser.newPage()
  await page.addInitScript(() => {
    document.addEventListener('DOMContentLoaded', () => {
      document.documentElement.style.fontSize = '200%'
    })
  })
  await openApp(page)
  await page.screenshot({ path: info.outputPath('twice.png'), fullPage: true })
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(1440)
  const covered = await page
    .locator('main :is(h2, button, input, select):visible')
    .evaluateAll((elements) => {
      const boxes = elements
        .filter((element) => !element.closest('fieldset[data-above]') && !element.closest('li button'))
        .map((element) => ({ element, box: element.getBoundingClientRect() }))
      return boxes.flatMap(({ element, box }, i) =>
        boxes
          .slice(i + 1)
          .filter(
            (other) =>
              box.left < other.box.right - 1 &&
              other.box.left < box.right - 1 &&
              box.top < other.box.bottom - 1 &&
              other.box.top < box.bottom - 1,
          )
          .map((other) => `${element.outerHTML.slice(0, 90)} and ${other.element.outerHTML.slice(0, 90)}`),
      )
    })
  expect(covered).toEqual([])
  await page.close()
})

test('at 1440 x 900 all of a compressor is seen at once, with its picture, the chain and the take', async ({
  page,
}) => {
  await page
    .getByRole('button', { name: /^3? ?Compressor/ })
    .first()
    .click()
  const bar = await page.getByRole('region', { name: 'Listening' }).boundingBox()
  const stage = page.getByRole('region', { name: /Compressor/ })
  for (const part of [stage, stage.getByRole('img'), stage.getByRole('slider', { name: 'Mix' })]) {
    const box = await part.boundingBox()
    expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(bar?.y ?? 0)
  }
  expect(await page.evaluate(() => window.scrollY)).toBe(0)
})

test('at 1024 x 768 the first settings of a compressor are seen with the chain, the take and the care note', async ({
  page,
}) => {
  await page.setViewportSize({ width: 1024, height: 768 })
  await expect(page.getByText('Figures and sources')).toBeVisible()
  await page
    .getByRole('button', { name: /^3? ?Compressor/ })
    .first()
    .click()
  expect(await page.evaluate(() => window.scrollY)).toBe(0)
  const bar = await page.getByRole('region', { name: 'Listening' }).boundingBox()
  for (const name of ['Threshold', 'Ratio', 'Knee', 'Attack']) {
    const box = await page.getByRole('slider', { name, exact: true }).boundingBox()
    expect((box?.y ?? 0) + (box?.height ?? 0), name).toBeLessThanOrEqual(bar?.y ?? 0)
  }
})

test('at 1440 x 900 five stages, stored versions, a compared band and a note push no figure out of sight', async ({
  page,
}) => {
  await page.getByRole('button', { name: '+ Add stage' }).click()
  await page.getByRole('button', { name: /^Saturator/ }).click()
  const bar = page.getByRole('region', { name: 'Listening' })
  const low = (await bar.boundingBox())?.height
  await keepTwoAndCompareBand(page)
  await expect(page.getByRole('radio', { name: 'versions' })).toBeVisible()
  expect((await bar.boundingBox())?.height).toBe(low)
  await giveTake(page, RECORDING)
  await expect(page.getByText(/Your chain is unchanged/)).toBeVisible()
  await expectFigures(page)
  const top = (await bar.boundingBox())?.y ?? 0
  const parts = [
    page.getByRole('region', { name: 'Response' }).getByRole('img'),
    page.getByRole('row', { name: /^Noise floor/ }),
    page.getByRole('button', { name: 'Add a band' }),
  ]
  for (const part of parts) {
    const box = await part.boundingBox()
    expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(top)
  }
  const margin = await page.getByRole('region', { name: 'Take' }).boundingBox()
  const table = await page.getByRole('table').boundingBox()
  expect((table?.x ?? 0) + (table?.width ?? 0)).toBeLessThanOrEqual((margin?.x ?? 0) + (margin?.width ?? 0))
})

test('the projector view enlarges type, hides what need not be shown, and goes again with its key', async ({
  page,
}, info) => {
  await page.setViewportSize({ width: 1280, height: 720 })
  const size = () =>
    page
      .getByRole('region', { name: 'Take' })
      .getByRole('paragraph')
      .first()
      .evaluate((note) => getComputedStyle(note).fontSize)
  const small = Number.parseFloat(await size())
  await page.keyboard.press('p')
  await expect(page.getByRole('button', { name: 'Leave projector' })).toBeVisible()
  for (const name of [/^Undo/, /^Redo/, 'Blind trial', 'More'])
    await expect(page.getByRole('banner').getByRole('button', { name })).toBeVisible()
  expect(Number.parseFloat(await size())).toBeGreaterThanOrEqual(1.2 * small)
  for (const name of ['Deliver', 'Reset Equaliser', 'Remove Equaliser', 'Times'])
    await expect(page.getByRole('button', { name })).toBeHidden()
  await page.screenshot({ path: info.outputPath('projector.png') })
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(1280)
  await page.getByRole('button', { name: 'Leave projector' }).click()
  await expect(page.getByRole('button', { name: 'Deliver' })).toBeVisible()
})

for (const viewport of [
  { width: 1280, height: 720 },
  { width: 1440, height: 900 },
  { width: 1920, height: 1080 },
]) {
  test(`on a projector of ${viewport.width} px the take, the path and the numbers are seen together`, async ({
    page,
  }, info) => {
    await page.setViewportSize(viewport)
    await page.keyboard.press('p')
    await expect(page.getByRole('button', { name: 'Leave projector' })).toBeVisible()
    await page.screenshot({ path: info.outputPath('projector.png') })
    const bar = await page.getByRole('region', { name: 'Listening' }).boundingBox()
    for (const name of ['Take', 'Chain', 'Figures']) {
      const box = await page.getByRole('region', { name }).boundingBox()
      expect((box?.y ?? 0) + (box?.height ?? 0), name).toBeLessThanOrEqual(bar?.y ?? 0)
    }
    const table = await page.getByRole('table').boundingBox()
    expect((table?.x ?? 0) + (table?.width ?? 0)).toBeLessThanOrEqual(viewport.width - MARGIN_PX)
    const fontPx = await page.evaluate(() => Number.parseFloat(getComputedStyle(document.body).fontSize))
    // As large against the window, however many points that has.
    expect(fontPx / viewport.width).toBeGreaterThan(0.9375 * 0.0145)
  })
}

test('in the colours of the reader, with little motion, it still works', async ({ page }, info) => {
  await page.emulateMedia({ forcedColors: 'active', reducedMotion: 'reduce' })
  await page.screenshot({ path: info.outputPath('forced-colours.png'), fullPage: true })
  const moving = await page.evaluate(() =>
    [...document.querySelectorAll('*')].some((element) => {
      const { transitionDuration, animationName } = getComputedStyle(element)
      return (
        animationName !== 'none' || transitionDuration.split(', ').some((time) => Number.parseFloat(time) > 0)
      )
    }),
  )
  expect(moving).toBe(false)
  // Selected and switched must be told apart without our colours: by the sort of line.
  const widths = await page
    .locator('main li[data-selected] > :first-child')
    .evaluateAll((stages) => stages.map((stage) => getComputedStyle(stage).borderBlockStartWidth))
  expect(new Set(widths).size).toBeGreaterThan(1)
})
