import { expect, type Locator, type Page, test } from '@playwright/test'
import { splatterDb } from '../test/setup/splatter'
import { takeCaptured } from './setup/capture'
import { captureFor, openWithTone, RATE } from './setup/tone'

const TONE_HZ = 1000
/** So quiet that the guard has nothing to do at any setting. */
const TONE_LEVEL = 0.03
/** As far as a hand's movement spreads a tone and its harmonics. */
const APART_HZ = 350
const SWEEP_MS = 1000
const STAGES = 6
const RAMPS_MS = 200

// For the recorder at the output.
test.use({ bypassCSP: true })
test.setTimeout(240_000)

/** Moves a slider from one end to the other and back to where it was, a step with every frame drawn. */
function sweepSlider(slider: Locator): Promise<void> {
  return slider.evaluate(async (element, sweepMs) => {
    if (!(element instanceof HTMLInputElement)) throw new Error('no slider')
    const setValue = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set
    const moveTo = (position: number) => {
      setValue?.call(element, String(position))
      element.dispatchEvent(new Event('input', { bubbles: true }))
    }
    const before = element.valueAsNumber
    for (const [from, to] of [
      [0, 1],
      [1, before],
    ] as const) {
      const start = performance.now()
      for (let share = 0; share < 1; ) {
        share = ((await new Promise<number>(requestAnimationFrame)) - start) / (sweepMs * Math.abs(to - from))
        moveTo(from + (to - from) * Math.min(1, Math.max(0, share)))
      }
    }
    moveTo(before)
    element.blur()
  }, SWEEP_MS)
}

async function addStage(page: Page, kind: string): Promise<void> {
  await page.getByRole('button', { name: 'Add a stage' }).click()
  await page
    .getByRole('button', { name: new RegExp(`^${kind}`) })
    .last()
    .click()
}

test('every slider swept end to end under a tone leaves less than -60 dB beyond 350 Hz of it and its harmonics', async ({
  page,
}) => {
  await openWithTone(page, { frequencyHz: TONE_HZ, level: TONE_LEVEL, seconds: 150 })
  await addStage(page, 'Saturator')
  await addStage(page, 'Gain')
  await page.keyboard.press('Space')
  // The first sound of all fades in: let it pass.
  await page.waitForTimeout(1500)
  const steady = await captureFor(page, 1)
  const toneLevel = steady.reduce((peak, x) => Math.max(peak, Math.abs(x)), 0)
  expect(toneLevel).toBeGreaterThan(0.001)
  const limits = { sampleRate: RATE, toneHz: TONE_HZ, toneLevel, apartHz: APART_HZ }
  expect(splatterDb(steady, limits), 'the tone alone').toBeLessThan(-80)

  const figures: string[] = []
  const stages = page.locator('[data-stage-id]')
  await expect(stages).toHaveCount(STAGES)
  for (let stage = 0; stage < STAGES; stage++) {
    await stages.nth(stage).getByRole('button').first().click()
    const sliders = page.locator('section[aria-labelledby="stage-at-hand"] input[type="range"]:enabled')
    for (let i = 0; i < (await sliders.count()); i++) {
      const slider = sliders.nth(i)
      const name = `${stage + 1} ${await slider.getAttribute('aria-label')}`
      await page.waitForTimeout(RAMPS_MS)
      await takeCaptured(page)
      await sweepSlider(slider)
      await page.waitForTimeout(RAMPS_MS)
      const output = await takeCaptured(page)
      expect(output.length, name).toBeGreaterThan(RATE)
      const splatter = splatterDb(output, limits)
      figures.push(`${name}: ${splatter.toFixed(1)} dB`)
      expect.soft(splatter, name).toBeLessThan(-60)
    }
  }
  test.info().annotations.push({ type: 'measured', description: figures.join('; ') })
  expect(figures.length).toBeGreaterThan(30)
})
