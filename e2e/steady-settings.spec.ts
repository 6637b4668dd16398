import { expect, type Page, test } from '@playwright/test'
import { openApp } from './setup/app-page'
import { pageAtRest } from './setup/changes'

interface Seen {
  /** Where each control stands in the stage, which figures that come in late may move as a whole. */
  readonly places: string
  /** How far the help hangs out over what follows, CSS pixels. */
  readonly overflow: number
}

/** Points at every control of the stage in turn, and says what was seen while each help was told. */
function pointAtAll(page: Page): Promise<readonly (readonly [help: string, seen: Seen])[]> {
  return page.locator('section[aria-labelledby="selected-stage"]').evaluate(async (stage) => {
    const controls = [...stage.querySelectorAll<HTMLElement>('input, select, button')]
    const help = stage.querySelector('p:not([aria-live])')
    const told = new Map<string, Seen>()
    for (const control of controls) {
      control.focus({ preventScroll: true })
      for (const _ of ['state', 'paint']) await new Promise(requestAnimationFrame)
      const { x: left, y: top } = stage.getBoundingClientRect()
      const places = controls
        .map((each) => each.getBoundingClientRect())
        .map(({ x, y }) => [Math.round(10 * (x - left)) / 10, Math.round(10 * (y - top)) / 10])
      told.set(help?.textContent ?? '', {
        places: JSON.stringify(places),
        overflow: (help?.scrollHeight ?? 0) - (help?.clientHeight ?? 0),
      })
    }
    return [...told]
  })
}

test('at no width does a help move or cover the control that it is told of, or any other', async ({
  page,
}) => {
  await openApp(page)
  for (const kind of [/^Saturator/, /^Gain/]) {
    await page.getByRole('button', { name: '+ Add stage' }).click()
    await page.getByRole('button', { name: kind }).last().click()
  }
  const stages = page.locator('[data-stage-id]')
  await expect(stages).toHaveCount(6)
  for (const width of [1440, 1024, 768, 390, 360, 320]) {
    await page.setViewportSize({ width, height: 900 })
    await pageAtRest(page)
    for (let k = 0; k < 6; k++) {
      await stages.nth(k).getByRole('button').first().click()
      const seen = await pointAtAll(page)
      const places = seen[0]?.[1].places
      for (const [help, at] of seen) {
        expect.soft(at.places, `${width} px, stage ${k + 1}: ${help}`).toBe(places)
        expect.soft(at.overflow, `${width} px, stage ${k + 1}: ${help}`).toBeLessThanOrEqual(0)
      }
      expect(seen.length).toBeGreaterThan(1)
    }
  }
})
