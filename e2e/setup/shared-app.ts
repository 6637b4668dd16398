import { test as base, type Page } from '@playwright/test'
import { openApp } from './app-page'
import { everythingShown } from './changes'
import { ORIGIN } from './port'

const VIEWPORT = { width: 1440, height: 900 }

/** One open page, and what it showed when it was opened. */
class SharedApp {
  private shown = ''
  private used = false

  constructor(private readonly page: Page) {}

  /** The page as it was when it was opened; opened anew where it cannot be brought back to that. */
  async asOpened(): Promise<Page> {
    if (!this.used || !(await this.broughtBack())) {
      await openApp(this.page)
      this.shown = await this.look()
    }
    this.used = true
    return this.page
  }

  /** Takes back what looking at the page does to it. @returns whether that was all there was to take back */
  private async broughtBack(): Promise<boolean> {
    await this.page.emulateMedia({ colorScheme: 'light', forcedColors: null, reducedMotion: null })
    await this.page.setViewportSize(VIEWPORT)
    const firstSelected = this.page.locator('[data-stage-id="level"]').getByRole('button').first()
    await firstSelected.evaluateAll((found) => {
      for (const button of found) if (button instanceof HTMLElement) button.click()
    })
    return (await this.look()) === this.shown
  }

  private async look(): Promise<string> {
    await this.page.mouse.move(0, 0)
    await this.page.evaluate(() => {
      // Tab goes on from what had the focus last: from the page's beginning again.
      const { documentElement } = document
      documentElement.tabIndex = -1
      documentElement.focus()
      documentElement.blur()
      documentElement.removeAttribute('tabindex')
      window.scrollTo(0, 0)
    })
    return (await everythingShown(this.page)).join('\n')
  }
}

/**
 * For tests that look at the page and leave it as it is: `page` is an open bench that the tests of a worker share,
 * handed to each of them as it was when it was opened, 1440 x 900 pixels and light. What a test changes is gone before
 * the next, too, at the price of opening the page anew.
 */
export const test = base.extend<object, { sharedApp: SharedApp }>({
  sharedApp: [
    async ({ browser }, use) => {
      const context = await browser.newContext({ baseURL: ORIGIN, viewport: VIEWPORT })
      await use(new SharedApp(await context.newPage()))
      await context.close()
    },
    { scope: 'worker' },
  ],
  page: async ({ sharedApp }, use) => use(await sharedApp.asOpened()),
})
