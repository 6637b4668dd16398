import { expect, test } from '@playwright/test'
import { largestStep } from '../test/setup/engine'
import { mulberry32 } from '../test/setup/signals'
import { typeLoop } from './setup/app-page'
import { takeCaptured } from './setup/capture'
import { captureFor, openWithTone, RATE } from './setup/tone'

const CROSSFADE_SECONDS = 0.015
const LOOP_FADE_SECONDS = 0.008
const LOOP_SECONDS = 1.1

// For the recorder at the output.
test.use({ bypassCSP: true })

test('at a real output a loop that goes round while the sides are switched has no click and no gap', {
  tag: '@real-time',
}, async ({ page }) => {
  // The loop holds 205.48 periods of it: without a fade its seam would be a step from crest to trough.
  const frequencyHz = 186.8
  await openWithTone(page, { frequencyHz, level: 0.25, seconds: 8 })
  await typeLoop(page, 2, 2 + LOOP_SECONDS)
  await page.keyboard.press('Space')
  // The first sound of all fades in: let it pass.
  await page.waitForTimeout(1500)
  const peaks: number[] = []
  for (let side = 0; side < 2; side++) {
    const settled = await captureFor(page, 0.6)
    peaks.push(settled.reduce((peak, x) => Math.max(peak, Math.abs(x)), 0))
    await page.keyboard.press('x')
    await page.waitForTimeout(200)
  }
  const random = mulberry32(7)
  await takeCaptured(page)
  for (let switches = 0; switches < 20; switches++) {
    await page.keyboard.press('x')
    await page.waitForTimeout(10 + 190 * random())
  }
  const output = await takeCaptured(page)

  expect(output.length).toBeGreaterThan(1.5 * LOOP_SECONDS * RATE)
  const [quieter, louder] = [Math.min(...peaks), Math.max(...peaks)]
  expect(quieter, 'both sides are heard').toBeGreaterThan(0.01)
  // The louder tone, at a seam of the loop, while a crossfade goes from one side to the other.
  const toneStep = louder * 2 * Math.sin((Math.PI * frequencyHz) / RATE)
  const allowed =
    toneStep + (2 * louder) / (LOOP_FADE_SECONDS * RATE) + (quieter + louder) / (CROSSFADE_SECONDS * RATE)
  const found = largestStep(output)
  const figures = `largest step ${found.toExponential(2)}, allowed ${allowed.toExponential(2)}`
  test.info().annotations.push({ type: 'measured', description: figures })
  expect(found, figures).toBeLessThan(allowed)
  for (let from = 0; from + 960 < output.length; from += 480) {
    const stretch = output.subarray(from, from + 960)
    expect(stretch.reduce((peak, x) => Math.max(peak, Math.abs(x)), 0)).toBeGreaterThan(quieter / 2)
  }
})
