import { mkdtempSync } from 'node:fs'
import { join } from 'node:path'
import puppeteer, { type Browser, type LaunchOptions, type Page } from 'puppeteer-core'
import { CHROMIUM } from '../../../test/setup/chromium'
import { FIREFOX } from '../needs'
import type { Surroundings } from '../surroundings'
import { pause } from '../within'
import {
  ANSWER_LIMIT_MS,
  type Engine,
  HELD_MS,
  type Json,
  type Point,
  REST_MS,
  sourceOf,
  TAKE_INPUT,
} from './engine'

const VIEWPORT = { width: 1440, height: 900 }
/** For what comes on the console a little after the load, ms. */
const AFTER_LOAD_MS = 5000

const launches = {
  chromium: {
    browser: 'chrome',
    executablePath: CHROMIUM.executablePath,
    args: CHROMIUM.args,
    ignoreDefaultArgs: ['--mute-audio'],
  },
  firefox: { browser: 'firefox', executablePath: FIREFOX },
} as const satisfies Record<string, LaunchOptions>

/** Chromium by its own protocol and Firefox by WebDriver BiDi, through the same calls. */
export async function startPuppeteer(
  name: keyof typeof launches,
  { processes, folder, env }: Surroundings,
): Promise<Engine> {
  const browser: Browser = await puppeteer.launch({
    ...launches[name],
    headless: true,
    env,
    userDataDir: mkdtempSync(join(folder, `${name}-`)),
    timeout: ANSWER_LIMIT_MS,
    protocolTimeout: ANSWER_LIMIT_MS,
    // They end with the run, and the run decides when.
    handleSIGINT: false,
    handleSIGTERM: false,
    handleSIGHUP: false,
  })
  const child = browser.process()
  if (child) processes.adopt(child, 'SIGKILL')
  const page: Page = await browser.newPage()
  await page.setViewport(VIEWPORT)
  const complaints: string[] = []
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warn') complaints.push(message.text())
  })
  page.on('pageerror', (error) => complaints.push(String(error)))
  // The page asks before it is left with changes.
  page.on('dialog', (dialog) => void dialog.accept().catch(() => undefined))
  const open = async (address: string) => {
    await page.goto(address, { waitUntil: 'load', timeout: ANSWER_LIMIT_MS })
  }
  return {
    name,
    version: await browser.version(),
    open,
    run: <Words extends readonly Json[], Answer>(script: (...words: Words) => Answer, ...words: Words) =>
      page.evaluate<[], () => Answer>(sourceOf(script, words)),
    point: ({ x, y }: Point) => page.mouse.move(x, y),
    press: async ({ x, y }: Point) => {
      await page.mouse.move(x, y)
      await pause(REST_MS)
      await page.mouse.down()
      await pause(HELD_MS)
      await page.mouse.up()
    },
    type: (text) => page.keyboard.type(text),
    pressEnter: () => page.keyboard.press('Enter'),
    giveTake: async (path) => {
      const input = await page.$(TAKE_INPUT)
      if (!input) throw new Error('The page has no input for a take.')
      await input.uploadFile(path)
    },
    complaintsAtLoad: async (address) => {
      complaints.length = 0
      await open(address)
      await pause(AFTER_LOAD_MS)
      return complaints.splice(0)
    },
    end: () => child && processes.end(child),
  }
}
