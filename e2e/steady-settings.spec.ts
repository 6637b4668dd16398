import { expect, type Page, test } from '@playwright/test'
import { openApp } from './setup/app-page'
import { pageAtRest } from './setup/changes'

/** Gives the focus to every control of the stage in turn, and says where each control then stands in it. */
function focusOnAll(page: Page): Promise<readonly (readonly [control: string, places: string])[]> {
  return page.locator('section[aria-labelledby="selected-stage"]').evaluate(async (stage) => {
    const controls = [...stage.querySelectorAll<HTMLElement>('input, select, button')]
    const seen: [string, string][] = []
    for (const control of controls) {
      control.focus({ preventScroll: true })
      for (const _ of ['state', 'paint']) await new Promise(requestAnimationFrame)
      const { x: left, y: top } = stage.getBoundingClientRect()
      const places = controls
        .map((each) => each.getBoundingClientRect())
        .map(({ x, y }) => [Math.round(10 * (x - left)) / 10, Math.round(10 * (y - top)) / 10])
      seen.push([control.ariaLabel ?? control.textContent, JSON.stringify(places)])
    }
    return seen
  })
}

/** Lengths of the sliders of the stage, CSS pixels. */
function sliderWidths(page: Page): Promise<number[]> {
  return page
    .locator('section[aria-labelledby="selected-stage"] input[type="range"]')
    .evaluateAll((sliders) => sliders.map((slider) => slider.getBoundingClientRect().width))
}

test('at no width does a control move when another has the focus, and no slider is shorter than 120 px', async ({
  page,
}) => {
  await openApp(page)
  for (const kind of [/^Saturator/, /^Gain/]) {
    await page.getByRole('button', { name: '+ Add stage' }).click()
    await page.getByRole('button', { name: kind }).last().click()
  }
  const stages = page.locator('[data-stage-id]')
  await expect(stages).toHaveCount(6)
  for (const width of [2560, 1440, 1280, 1024, 768, 390, 360, 320]) {
    await page.setViewportSize({ width, height: 900 })
    await pageAtRest(page)
    for (let k = 0; k < 6; k++) {
      await stages.nth(k).getByRole('button').first().click()
      const more = page.getByRole('button', { name: /^More settings/ })
      if ((await more.count()) > 0 && (await more.getAttribute('aria-expanded')) === 'false')
        await more.click()
      const seen = await focusOnAll(page)
      for (const [control, places] of seen)
        expect.soft(places, `${width} px, stage ${k + 1}: ${control}`).toBe(seen[0]?.[1])
      expect(seen.length).toBeGreaterThan(2)
      const widths = await sliderWidths(page)
      expect(widths.length).toBeGreaterThan(0)
      expect.soft(Math.min(...widths), `${width} px, stage ${k + 1}`).toBeGreaterThanOrEqual(120)
    }
  }
})
