import { expect, type Page, test } from '@playwright/test'
import { largestStep } from '../test/setup/engine'
import { joined, mulberry32 } from '../test/setup/signals'
import { typeLoop } from './setup/app-page'
import { advance, advanceToSound, stepOutput } from './setup/stepped-output'
import { openWithTone, RATE } from './setup/tone'

const CROSSFADE_SECONDS = 0.015
const LOOP_FADE_SECONDS = 0.008
/** The first sound of all fades in: it has come up by then. */
const COME_UP_SECONDS = 1.5

// For the recorder at the output.
test.use({ bypassCSP: true })

function peakOf(samples: Float32Array): number {
  return samples.reduce((peak, x) => Math.max(peak, Math.abs(x)), 0)
}

async function play(page: Page): Promise<void> {
  await page.keyboard.press('Space')
  await advanceToSound(page)
  await advance(page, COME_UP_SECONDS)
}

function expectBelow(found: number, allowed: number): void {
  const figures = `largest step ${found.toExponential(2)}, allowed ${allowed.toExponential(2)}`
  test.info().annotations.push({ type: 'measured', description: figures })
  expect(found, figures).toBeLessThan(allowed)
}

test('switched 100 times at random moments, no step is larger than the tones and a 15 ms crossfade make', async ({
  page,
}) => {
  const tone = { frequencyHz: 220, level: 0.25, seconds: 40 }
  await openWithTone(page, tone, () => stepOutput(page, 60))
  await play(page)
  const settled: Float32Array[] = []
  for (let side = 0; side < 2; side++) {
    settled.push(await advance(page, 0.6))
    await page.keyboard.press('x')
    await advance(page, 0.2)
  }
  const random = mulberry32(7)
  const parts: Float32Array[] = []
  for (let switches = 0; switches < 100; switches++) {
    await page.keyboard.press('x')
    parts.push(await advance(page, 0.01 + 0.19 * random()))
  }
  const output = joined(parts)

  const [bypassed, processed] = settled.map((samples) => ({
    step: largestStep(samples),
    peak: peakOf(samples),
  }))
  if (!bypassed || !processed) throw new Error('there are two sides')
  // A crossfade of a to b moves by no more than the steeper of both, and by all of their difference over its length.
  const crossfade = (bypassed.peak + processed.peak) / (CROSSFADE_SECONDS * RATE)
  expect(output.length).toBeGreaterThan(8 * RATE)
  expect(Math.min(bypassed.peak, processed.peak), 'both sides are heard').toBeGreaterThan(0.01)
  expectBelow(largestStep(output), Math.max(bypassed.step, processed.step) + crossfade)
})

test('a loop played ten times has no step at its seam beyond tone and crossfade, and no gap', async ({
  page,
}) => {
  // The loop holds 205.48 periods of it: without a fade its seam would be a step from crest to trough.
  const frequencyHz = 186.8
  await openWithTone(page, { frequencyHz, level: 0.25, seconds: 8 }, () => stepOutput(page, 20))
  await page.keyboard.press('x')
  await typeLoop(page, 2, 3.1)
  await play(page)
  const output = await advance(page, 11.5)
  await expect(page.getByRole('button', { name: /^Stop/ })).toBeVisible()

  expect(output.length).toBeGreaterThan(10 * 1.1 * RATE)
  const peak = peakOf(output)
  const toneStep = peak * 2 * Math.sin((Math.PI * frequencyHz) / RATE)
  expectBelow(largestStep(output), toneStep + (2 * peak) / (LOOP_FADE_SECONDS * RATE))
  // The loop comes round to the very same samples, all ten times, seams included.
  const period = Math.round(1.1 * RATE)
  for (let n = 0; n + period < output.length; n++) {
    if (Math.abs((output[n] ?? 0) - (output[n + period] ?? 0)) > 1e-6) {
      throw new Error(`the loop differs from its next turn at ${n}`)
    }
  }
  // No gap: no stretch of 20 ms in which the tone is not there.
  for (let from = 0; from + 960 < output.length; from += 480) {
    expect(peakOf(output.subarray(from, from + 960))).toBeGreaterThan(peak / 2)
  }
})
