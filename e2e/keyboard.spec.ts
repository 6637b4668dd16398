import { expect, type Page, test } from '@playwright/test'
import { expectFigures, openApp, RECORDING } from './setup/app-page'

/** Goes on by Tab until the element with this role and name has the focus: whoever cannot get there fails. */
async function tabTo(
  page: Page,
  role: 'button' | 'textbox' | 'slider' | 'switch' | 'radio',
  name: string | RegExp,
) {
  const target = page.getByRole(role, { name, ...(typeof name === 'string' && { exact: true }) }).first()
  // Found once: finding it by its role takes longer than a press.
  const element = await target.evaluateHandle((found) => found)
  for (let presses = 0; presses < 200; presses++) {
    if (await element.evaluate((sought) => sought === document.activeElement)) return target
    await page.keyboard.press('Tab')
  }
  throw new Error(`Tab does not lead to ${role} ${name}`)
}

test('a take is chosen with a key', async ({ page }) => {
  // Asked for early: the browser opens its own chooser until it has been told not to.
  const choosing = page.waitForEvent('filechooser')
  await openApp(page)
  await page.keyboard.press('o')
  await (await choosing).setFiles(RECORDING)
  await expect(page.getByRole('banner')).toContainText('Front_Center.wav')
  await expectFigures(page)
})

test('the whole job is done with keys alone', async ({ page }) => {
  await openApp(page)

  // Choose a stage, and change a setting by typing and by arrows.
  await page.keyboard.press(']')
  await expect(page.getByRole('heading', { name: /De-esser/ })).toBeVisible()
  await page.keyboard.press('[')
  await expect(page.getByRole('heading', { name: /Compressor/ })).toBeVisible()
  const typed = await tabTo(page, 'textbox', 'Threshold, typed')
  await page.keyboard.type('-19,3')
  await page.keyboard.press('Enter')
  await expect(typed).toHaveValue('−19.3 dBFS')
  // The field has the focus still, but the page's keys work in it: it plays, and stops.
  await page.keyboard.press('Space')
  await expect(page.getByRole('button', { name: 'Stop' })).toBeVisible()
  await page.keyboard.press('Space')
  await expect(page.getByRole('button', { name: 'Play' })).toBeVisible()
  await expect(typed).toHaveValue('−19.3 dBFS')
  // Undo and redo in the field itself; but while something is typed, letters are what is taken back.
  await page.keyboard.press('Control+z')
  await expect(typed).not.toHaveValue('−19.3 dBFS')
  await page.keyboard.press('Control+y')
  await expect(typed).toHaveValue('−19.3 dBFS')
  await page.keyboard.press('End')
  await page.keyboard.type('7')
  await page.keyboard.press('Control+z')
  await expect(typed).toHaveValue('−19.3 dBFS')
  await expect(page.getByRole('button', { name: /^Undo: threshold/ })).toBeVisible()
  // Escape leaves the field, and nothing of what was typed is taken.
  await page.keyboard.press('Escape')
  await expect(typed).not.toBeFocused()
  await expect(typed).toHaveValue('−19.3 dBFS')
  await typed.focus()
  await page.keyboard.press('ArrowDown')
  await expect(typed).not.toHaveValue('−19.3 dBFS')
  const ratio = await tabTo(page, 'slider', 'Ratio')
  await page.keyboard.press('ArrowRight')
  await expect(ratio).not.toHaveAttribute('aria-valuetext', '3 to 1')
  await page.keyboard.press('Control+z')
  await expect(ratio).toHaveAttribute('aria-valuetext', '3 to 1')

  // Makeup gain by loudness.
  const makeup = page.getByRole('textbox', { name: 'Makeup gain, typed' })
  const before = await makeup.inputValue()
  await tabTo(page, 'button', 'Match loudness by makeup gain')
  await page.keyboard.press('Enter')
  await expect(makeup).not.toHaveValue(before)

  // Take a band out.
  await page.keyboard.press('[')
  await page.keyboard.press('[')
  const band = await tabTo(page, 'switch', 'Band b')
  await page.keyboard.press('Space')
  await expect(band).toHaveAttribute('aria-checked', 'false')

  // Another order.
  await tabTo(page, 'button', 'Move Equaliser later')
  await page.keyboard.press('Enter')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('switch', { name: '3 Equaliser' })).toBeVisible()
  await expect(page.getByRole('button', { name: 'Move Equaliser later' })).toBeFocused()

  // A loop by typing its ends.
  await tabTo(page, 'button', 'Times')
  await page.keyboard.press('Enter')
  await tabTo(page, 'textbox', 'Loop from')
  await page.keyboard.type('0:06.2')
  await page.keyboard.press('Enter')
  await tabTo(page, 'textbox', 'to')
  await page.keyboard.type('0:09.0')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('button', { name: 'loop on' })).toBeVisible()
  await tabTo(page, 'button', 'Clear loop')

  // Listen: play, the other side, this stage, stop.
  await page.getByRole('button', { name: 'Clear loop' }).blur()
  await page.keyboard.press('Space')
  await expect(page.getByRole('button', { name: 'Stop', exact: true })).toBeVisible()
  await page.keyboard.press('x')
  await expect(page.getByRole('radio', { name: 'without', exact: true })).toBeChecked()
  await page.keyboard.press('c')
  await expect(page.getByRole('radio', { name: /^stage \d/ })).toBeChecked()
  await page.keyboard.press('Space')
  await expect(page.getByRole('button', { name: 'Play', exact: true })).toBeVisible()

  // Deliver.
  await tabTo(page, 'button', 'Deliver')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('dialog', { name: 'Deliver' })).toBeVisible()
  const downloading = page.waitForEvent('download')
  await tabTo(page, 'button', 'Save file')
  await page.keyboard.press('Enter')
  expect((await downloading).suggestedFilename()).toMatch(/evenhand, 24-bit\.wav$/)
  await page.keyboard.press('Escape')
  await expect(page.getByRole('button', { name: 'Deliver' })).toBeFocused()
})

test('every sheet gives the focus back to what opened it', async ({ page }) => {
  await openApp(page)
  for (const name of ['Blind trial', 'Deliver', 'Keys', 'Terms']) {
    // What is rare is in a menu, whose button has the focus again.
    const opener = name === 'Keys' || name === 'Terms' ? 'More' : name
    await tabTo(page, 'button', opener)
    await page.keyboard.press('Enter')
    if (opener !== name) {
      await tabTo(page, 'button', new RegExp(`^${name}`))
      await page.keyboard.press('Enter')
    }
    await expect(page.getByRole('dialog')).toBeVisible()
    await expect(page.getByRole('dialog').getByRole('heading').first()).toBeFocused()
    await page.keyboard.press('Escape')
    await expect(page.getByRole('dialog')).toBeHidden()
    await expect(page.getByRole('button', { name: opener, exact: true })).toBeFocused()
  }
})
