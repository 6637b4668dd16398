import { expect, type Locator, type Page, test } from '@playwright/test'
import { splatterDb } from '../test/setup/splatter'
import { bringOut } from './setup/samples'
import { advance, advanceToSound, stepOutput } from './setup/stepped-output'
import { openWithTone, RATE } from './setup/tone'

const TONE_HZ = 1000
/** So quiet that the guard has nothing to do at any setting. */
const TONE_LEVEL = 0.03
/** As far as a hand's movement spreads a tone and its harmonics. */
const APART_HZ = 350
const SWEEP_SECONDS = 1
/** As often as a page is drawn, and a hand's movement reaches it. */
const STEPS_PER_SECOND = 60
const STAGES = 6
/** Short, since all figures of it are worked out anew with every slider. */
const TAKE_SECONDS = 5
/** All that is played. */
const PLAYED_SECONDS = 150
/** Until what the last sweep left behind is over. */
const RAMPS_SECONDS = 0.2

// For the recorder at the output.
test.use({ bypassCSP: true })
test.setTimeout(900_000)

/**
 * Moves a slider from one end to the other and back to where it was, a step with every frame that would be drawn.
 * @returns what reached the output meanwhile
 */
async function sweepSlider(slider: Locator): Promise<Float32Array> {
  const sweeping = await slider.evaluateHandle(
    async (element, { sweepSeconds, stepsPerSecond, rampsSeconds }) => {
      const output = window.steppedOutput
      if (!(element instanceof HTMLInputElement) || !output) throw new Error('no slider, or nothing plays')
      const setValue = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set
      const moveTo = (position: number) => {
        setValue?.call(element, String(position))
        element.dispatchEvent(new Event('input', { bubbles: true }))
      }
      // What the last sweep left behind is no part of this one.
      await output.advance(rampsSeconds)
      const before = element.valueAsNumber
      for (const [from, to] of [
        [0, 1],
        [1, before],
      ] as const) {
        const steps = Math.ceil(sweepSeconds * Math.abs(to - from) * stepsPerSecond)
        for (let step = 0; step <= steps; step++) {
          moveTo(steps === 0 ? to : from + ((to - from) * step) / steps)
          await output.pass(1 / stepsPerSecond)
        }
      }
      moveTo(before)
      element.blur()
      return output.advance(rampsSeconds)
    },
    { sweepSeconds: SWEEP_SECONDS, stepsPerSecond: STEPS_PER_SECOND, rampsSeconds: RAMPS_SECONDS },
  )
  return bringOut(sweeping)
}

async function addStage(page: Page, kind: string): Promise<void> {
  await page.getByRole('button', { name: '+ Add stage' }).click()
  await page
    .getByRole('button', { name: new RegExp(`^${kind}`) })
    .last()
    .click()
}

/** Loops whole periods of the tone, with some of it around them: the loop's end goes on where it begins. */
async function loopInside(page: Page): Promise<void> {
  const position = page.getByRole('slider', { name: 'Position in the take' })
  for (const key of ['ArrowRight', 'f', 'ArrowRight', 'ArrowRight', 'ArrowRight', 'g', 'Home'])
    await position.press(key)
}

test('every slider swept end to end under a tone leaves less than -60 dB beyond 350 Hz of it and its harmonics', async ({
  page,
}) => {
  const tone = { frequencyHz: TONE_HZ, level: TONE_LEVEL, seconds: TAKE_SECONDS }
  await openWithTone(page, tone, () => stepOutput(page, PLAYED_SECONDS))
  await loopInside(page)
  await addStage(page, 'Saturator')
  await addStage(page, 'Gain')
  await page.locator('[data-stage-id]').first().getByRole('button').first().click()
  await page.getByRole('button', { name: 'Add a band' }).click()
  await page.keyboard.press('Space')
  // The first sound of all fades in: let it pass.
  await advanceToSound(page)
  await advance(page, 1.5)
  const steady = await advance(page, 1)
  const toneLevel = steady.reduce((peak, x) => Math.max(peak, Math.abs(x)), 0)
  expect(toneLevel).toBeGreaterThan(0.001)
  const limits = { sampleRate: RATE, toneHz: TONE_HZ, toneLevel, apartHz: APART_HZ }
  expect(splatterDb(steady, limits), 'the tone alone').toBeLessThan(-80)

  const figures: string[] = []
  const stages = page.locator('[data-stage-id]')
  await expect(stages).toHaveCount(STAGES)
  for (let stage = 0; stage < STAGES; stage++) {
    await stages.nth(stage).getByRole('button').first().click()
    const more = page.getByRole('button', { name: /^More settings/ })
    if ((await more.count()) > 0) await more.click()
    const sliders = page.locator('section[aria-labelledby="selected-stage"] input[type="range"]:enabled')
    for (let i = 0; i < (await sliders.count()); i++) {
      const slider = sliders.nth(i)
      const name = `${stage + 1} ${await slider.getAttribute('aria-label')}`
      const output = await sweepSlider(slider)
      expect(output.length, name).toBeGreaterThan(RATE)
      const splatter = splatterDb(output, limits)
      figures.push(`${name}: ${splatter.toFixed(1)} dB`)
      expect.soft(splatter, name).toBeLessThan(-60)
    }
  }
  test.info().annotations.push({ type: 'measured', description: figures.join('; ') })
  expect(figures.length).toBeGreaterThan(30)
})
