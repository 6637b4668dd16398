import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, type Page } from '@playwright/test'
import type { AxeResults, RunOptions } from 'axe-core'
import { test } from './setup/shared-app'

// Outside source: the rules of axe-core that stand for the success criteria of WCAG 2.2, levels A and AA, and its
// best practices.
const AXE = readFileSync(fileURLToPath(import.meta.resolve('axe-core/axe.min.js')), 'utf8')
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

/** The rules whose answer depends on what lies over what, and so on where the page is scrolled to. */
const RULES_OF_PLACE = ['color-contrast', 'target-size']

/** What axe finds on the page as it is now. */
async function runAxe(page: Page, options: RunOptions, within = 'html'): Promise<AxeResults['violations']> {
  if (await page.evaluate(() => !Reflect.has(window, 'axe'))) await page.evaluate(AXE)
  const results = await page.evaluate<AxeResults, { options: RunOptions; within: string }>(
    ({ options, within }) => Reflect.get(window, 'axe').run(within, options),
    { options: { ...options, resultTypes: ['violations'] }, within },
  )
  return results.violations
}

/** What choosing a stage changes. */
const OF_CHOICE = 'main section:is([aria-labelledby="selected-stage"], [aria-labelledby="the-chain"])'

/**
 * What axe finds within an element, one line for each it finds fault with: at the page's top, where the listening bar
 * lies over what is further down, and at its end.
 */
async function violations(page: Page, within?: string): Promise<string[]> {
  const found = new Set<string>()
  const looks: readonly [share: number, runOnly: NonNullable<RunOptions['runOnly']>][] = [
    [0, { type: 'tag', values: TAGS }],
    [1, { type: 'rule', values: RULES_OF_PLACE }],
  ]
  for (const [share, runOnly] of looks) {
    await page.evaluate((at) => window.scrollTo(0, at * document.documentElement.scrollHeight), share)
    for (const { id, help, nodes } of await runAxe(page, { runOnly }, within))
      for (const { target } of nodes) found.add(`${id}: ${help}: ${target.join(' ')}`)
  }
  return [...found]
}

const sizes = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
  { width: 360, height: 740 },
]

for (const colorScheme of ['light', 'dark'] as const) {
  test(`${colorScheme}, at every size and with every stage, nothing keeps anyone out`, async ({ page }) => {
    await page.emulateMedia({ colorScheme })
    for (const viewport of sizes) {
      await page.setViewportSize(viewport)
      for (const number of [1, 2, 3, 4]) {
        await page
          .locator('[data-stage-id]')
          .nth(number - 1)
          .getByRole('button')
          .first()
          .click()
        const found = await violations(page, number === 1 ? undefined : OF_CHOICE)
        expect.soft(found, `${viewport.width} px, stage ${number} selected`).toEqual([])
      }
    }
    await page.getByText('Figures and sources').click()
    await page.getByRole('switch', { name: '3 Compressor' }).click()
    await page.getByRole('button', { name: '+ Add stage' }).click()
    await page.getByRole('button', { name: /^Saturator/ }).click()
    for (const viewport of sizes) {
      await page.setViewportSize(viewport)
      const unfold = page.getByRole('button', { name: 'whole chain' })
      if (await unfold.isVisible()) await unfold.click()
      expect.soft(await violations(page), `${viewport.width} px, with everything unfolded`).toEqual([])
    }
  })

  test(`sheets, ${colorScheme}, keep nobody out`, async ({ page }) => {
    await page.emulateMedia({ colorScheme })
    const inHeader = (name: string | RegExp) => page.getByRole('banner').getByRole('button', { name })
    for (const name of ['Keys', 'Deliver', 'Blind trial', 'Terms']) {
      if (name === 'Keys' || name === 'Terms') await inHeader('More').click()
      await inHeader(name).click()
      await expect(page.getByRole('dialog')).toBeVisible()
      expect(await violations(page), name).toEqual([])
      await page.keyboard.press('Escape')
    }
    for (const name of ['More', /^Take:/]) {
      await inHeader(name).click()
      await expect(inHeader(/^(Keys|Open backing)/)).toBeVisible()
      expect(await violations(page), `menu ${name}`).toEqual([])
      await page.keyboard.press('Escape')
    }
  })
}

test('wherever the page is scrolled to, no target counts as covered by the listening bar', async ({
  page,
}) => {
  await page.setViewportSize({ width: 360, height: 740 })
  const STEP_PX = 60
  const end = await page.evaluate(() => document.documentElement.scrollHeight)
  for (let top = 0; top < end; top += STEP_PX) {
    await page.evaluate((at) => window.scrollTo(0, at), top)
    const found = await runAxe(page, { runOnly: { type: 'rule', values: ['target-size'] } })
    expect(found, `scrolled by ${top} px`).toEqual([])
  }
})

test('what has the focus is never beneath the listening bar', async ({ page }) => {
  // WCAG 2.2, 2.4.11: what receives keyboard focus is not entirely hidden by what the page lays over it.
  await page.setViewportSize({ width: 360, height: 740 })
  const hidden: string[] = []
  for (let presses = 0; presses < 60; presses++) {
    await page.keyboard.press('Tab')
    const covered = await page.evaluate(() => {
      const bar = document.querySelector('footer')
      const focused = document.activeElement
      if (!bar || !focused || focused === document.body || bar.contains(focused)) return null
      return focused.getBoundingClientRect().top >= bar.getBoundingClientRect().top ? focused.outerHTML : null
    })
    if (covered) hidden.push(covered)
  }
  expect(hidden).toEqual([])
})

test('what axe is asked for is found: a picture without a sentence', async ({ page }) => {
  await page.evaluate(() => document.querySelector('svg[role="img"]')?.removeAttribute('aria-label'))
  expect((await violations(page)).join()).toContain('svg-img-alt')
})
