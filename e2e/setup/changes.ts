import type { Page } from '@playwright/test'

declare global {
  interface Window {
    /** Every change of the page since the last look, in words. */
    pageChanges?: string[]
  }
}

/** Writes down from now on every change of the page's text, attributes and title: where, and to what. */
export async function recordChanges(page: Page): Promise<void> {
  await page.evaluate(() => {
    const placeOf = (node: Node | null): string => {
      if (!(node instanceof Element)) return ''
      const siblings = [...(node.parentElement?.children ?? [])]
      return `${placeOf(node.parentElement)}/${node.localName}[${siblings.indexOf(node)}]`
    }
    const changes: string[] = []
    window.pageChanges = changes
    new MutationObserver((records) => {
      for (const { target, attributeName } of records) {
        const element = target instanceof Element ? target : target.parentElement
        const now = attributeName === null ? element?.textContent : element?.getAttribute(attributeName)
        changes.push(`${placeOf(element)} ${attributeName ?? 'text'}: ${now}`)
      }
    }).observe(document, { subtree: true, childList: true, characterData: true, attributes: true })
  })
}

/**
 * The changes since the last call, each once, in the order of the alphabet. The time that passes is left out: how
 * far the playhead and the clocks are when they are looked at is different each time.
 */
export async function takeChanges(page: Page): Promise<string[]> {
  const changes = await page.evaluate(() => window.pageChanges?.splice(0) ?? [])
  return [...new Set(changes.map(withoutTime))].sort()
}

/** Text of the page with clocks, playheads and drawn identifiers made the same. */
export function withoutTime(text: string): string {
  return text
    .replaceAll(/\d+:\d\d\.\d/g, '0:00.0')
    .replaceAll(/translateX\([^)]*\)/g, 'translateX(0px)')
    .replaceAll(/_r_\w+_/g, 'id')
}

/** Without a change for so long, ms, a page is at rest: meters and figures change several times in it. */
const REST_MS = 300

/** Waits until the page has come to rest. */
export async function pageAtRest(page: Page): Promise<void> {
  await page.evaluate(
    (restMs) =>
      new Promise<void>((resolve) => {
        const rested = () => {
          observer.disconnect()
          resolve()
        }
        let timer = setTimeout(rested, restMs)
        const observer = new MutationObserver(() => {
          clearTimeout(timer)
          timer = setTimeout(rested, restMs)
        })
        observer.observe(document, { subtree: true, childList: true, characterData: true, attributes: true })
      }),
    REST_MS,
  )
}

/** What somebody, or a program that looks over their shoulder, can find on the page at rest. */
export async function everythingShown(page: Page): Promise<string[]> {
  const html = await page.evaluate(() => {
    const inputs = [...document.querySelectorAll('input')].map(({ checked, value }) => `${checked} ${value}`)
    return [document.documentElement.outerHTML, document.title, ...inputs].join('\n')
  })
  return [withoutTime(html), await page.locator('body').ariaSnapshot()]
}
