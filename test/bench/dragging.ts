import { fileURLToPath } from 'node:url'
import type { CDPSession, Page } from '@playwright/test'
import { encodeWav } from '../../src/files/wav/wav-writer'
import { withServedPage } from '../setup/served-page'
import { type DragReport, startProbe } from './dragging-probe'
import { longTake } from './long-take'

const PORT = 4176
const MOVES = 90
const BETWEEN_MOVES_MS = 16
const REACH_PX = 30

const LONG_MINUTES = 4

/** One drag, and what of it the page itself cannot tell. */
export interface Drag extends DragReport {
  /** Processor time of the page's main thread for each move, ms on average: what is left on a machine with time. */
  readonly workMs: number
}

/** The same drag, several times over, on the built page. */
export interface Drags {
  readonly what: string
  /** Null for the floor, which has no take. */
  readonly take: string | null
  readonly reports: readonly Drag[]
}

/**
 * Drags a band of the curve and the compressor's threshold, on the demo and on a long take, `times` over. The first
 * drag is the floor: a dot on a page that has nothing else.
 */
export function benchDragging(times: number): Promise<Drags[]> {
  return withServedPage(fileURLToPath(new URL('../..', import.meta.url)), PORT, async (page) => {
    await page.setViewportSize({ width: 1440, height: 900 })
    const drags: Drags[] = [
      { take: null, what: 'a dot on an empty page', reports: await onEmptyPage(page, times) },
    ]
    const dragAll = async (take: string) => {
      drags.push({ take, what: 'a band of the curve', reports: await dragged(page, times, middleOfBand) })
      drags.push({ take, what: 'a threshold', reports: await dragged(page, times, middleOfThreshold) })
    }
    await figuresAreIn(page)
    await dragAll('demo')
    await openLongTake(page)
    await dragAll(`${LONG_MINUTES} minutes`)
    return drags
  })
}

interface Point {
  readonly x: number
  readonly y: number
}

async function onEmptyPage(beside: Page, times: number): Promise<Drag[]> {
  const page = await beside.context().browser()?.newPage()
  if (!page) throw new Error('no browser to open a page in')
  await page.setContent('<div style="position: fixed; width: 24px; height: 24px; background: black"></div>')
  await page.evaluate(() => {
    const dot = document.querySelector('div')
    addEventListener('pointermove', ({ clientX, clientY }) => {
      if (dot) dot.style.translate = `${clientX}px ${clientY}px`
    })
  })
  const reports = await dragged(page, times, async () => ({ x: 300, y: 300 }))
  await page.close()
  return reports
}

async function dragged(page: Page, times: number, startAt: (page: Page) => Promise<Point>): Promise<Drag[]> {
  const session = await page.context().newCDPSession(page)
  // The bench's compiler marks functions that have names with a call of this, which the page lacks.
  await page.evaluate('globalThis.__name = (named) => named')
  await session.send('Performance.enable', { timeDomain: 'threadTicks' })
  const reports: Drag[] = []
  for (let i = 0; i < times; i++) {
    const start = await startAt(page)
    await page.evaluate(startProbe)
    const before = await processorMs(session)
    // One way, then the other: nothing drifts, and a drag ends away from where it began.
    await drag(session, start, i % 2 === 0 ? REACH_PX : -REACH_PX)
    const workMs = ((await processorMs(session)) - before) / MOVES
    const report = await page.evaluate(() => window.dragProbe?.finish())
    if (!report) throw new Error('the page was not watched')
    reports.push({ ...report, workMs })
  }
  await session.detach()
  return reports
}

/** Processor time that the tasks of the main thread have taken so far, ms. */
async function processorMs(session: CDPSession): Promise<number> {
  const { metrics } = await session.send('Performance.getMetrics')
  return (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? Number.NaN) * 1000
}

/** To and fro, to end at -`reachPx`. The browser is told itself: Playwright's mouse makes work for the page. */
async function drag(session: CDPSession, { x, y }: Point, reachPx: number): Promise<void> {
  const at = (type: 'mousePressed' | 'mouseMoved' | 'mouseReleased', along: number) =>
    session.send('Input.dispatchMouseEvent', {
      type,
      x: x + along,
      y: y + along / 2,
      button: 'left',
      buttons: type === 'mouseReleased' ? 0 : 1,
      clickCount: 1,
    })
  await at('mousePressed', 0)
  for (let i = 1; i <= MOVES; i++) {
    await at('mouseMoved', reachPx * Math.sin((i / MOVES) * 1.5 * Math.PI))
    await new Promise((resolve) => setTimeout(resolve, BETWEEN_MOVES_MS))
  }
  await at('mouseReleased', -reachPx)
}

/** The handle of band 2a. */
async function middleOfBand(page: Page): Promise<Point> {
  const handle = page.getByRole('slider', { name: '2 Equaliser, band a' })
  await handle.scrollIntoViewIfNeeded()
  const box = await handle.boundingBox()
  if (!box) throw new Error('no band to drag')
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
}

/** Puts the compressor at hand: the thumb of its threshold's slider. */
async function middleOfThreshold(page: Page): Promise<Point> {
  await page.locator('[data-stage-id] button[aria-current]', { hasText: 'Compressor' }).click()
  const slider = page.locator('input[type="range"][aria-label="Threshold"]')
  await slider.scrollIntoViewIfNeeded()
  const box = await slider.boundingBox()
  if (!box) throw new Error('no threshold to drag')
  const position = Number(await slider.inputValue())
  return { x: box.x + 8 + position * (box.width - 16), y: box.y + box.height / 2 }
}

async function openLongTake(page: Page): Promise<void> {
  const name = 'long.wav'
  const { bytes } = encodeWav(longTake(LONG_MINUTES), 'pcm16', { fileName: name })
  await page
    .locator('input[data-role="take"]')
    .setInputFiles({ name, mimeType: 'audio/wav', buffer: Buffer.from(bytes) })
  await page.getByRole('banner').getByText(name).first().waitFor()
  await figuresAreIn(page)
}

async function figuresAreIn(page: Page): Promise<void> {
  await page.getByRole('row', { name: /^Integrated.*\d/ }).waitFor({ timeout: 60_000 })
  await page.locator('table[aria-busy="false"]').first().waitFor({ timeout: 60_000 })
}
