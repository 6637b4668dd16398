import { MINIBROWSER } from '../needs'
import type { Surroundings } from '../surroundings'
import { pause, until } from '../within'
import { type Engine, HELD_MS, type Json, type Point, REST_MS, sourceOf, TAKE_INPUT } from './engine'
import { freePort } from './free-port'
import { WebDriver } from './web-driver'

const SIZE = { width: 1440, height: 900 }
/** Key of an element in WebDriver's answers (section 12.1, web element identifier). */
const ELEMENT = 'element-6066-11e4-a52e-4f735466cecf'
/** As WebDriver spells the key (section 15.4.2, normalised key values). */
const ENTER = '\uE007'
/** In which a plain window loads the page, and says what it has to say, ms. */
const LOAD_MS = 20_000

/** WebKitGTK by plain W3C WebDriver. */
export async function startWebKit(surroundings: Surroundings): Promise<Engine> {
  const { processes, env } = surroundings
  const port = await freePort()
  const base = `http://127.0.0.1:${port}`
  const child = processes.start('WebKitWebDriver', [`--port=${port}`], { env, stdio: 'ignore' }, 'SIGKILL')
  const isUp = () =>
    fetch(`${base}/status`).then(
      (answer) => answer.ok,
      () => false,
    )
  if (!(await until(20_000, isUp, Boolean))) throw new Error('WebKitWebDriver did not come up.')
  const driver = await WebDriver.start(base, {
    'webkitgtk:browserOptions': { binary: MINIBROWSER, args: ['--automation'] },
  })
  const run = async <Words extends readonly Json[], Answer>(
    script: (...words: Words) => Answer,
    ...words: Words
  ): Promise<Awaited<Answer>> => {
    // What the page throws comes back as an answer: the driver itself says little about it.
    const { answer, problem } = await driver.post<Ran<Awaited<Answer>>>('/execute/async', {
      script: `const done = arguments[0]
        Promise.resolve().then(() => ${sourceOf(script, words)}).then(
          (answer) => done({ answer: answer ?? null, problem: null }),
          (error) => done({ answer: null, problem: String(error) }))`,
      args: [],
    })
    if (problem !== null) throw new Error(problem)
    return answer
  }
  await resize(driver, run)
  const keys = (text: string) => {
    const actions = [...text].flatMap((value) => [
      { type: 'keyDown', value },
      { type: 'keyUp', value },
    ])
    return driver.post('/actions', { actions: [{ type: 'key', id: 'keyboard', actions }] })
  }
  const mouse = (actions: readonly object[]) =>
    driver.post('/actions', {
      actions: [{ type: 'pointer', id: 'mouse', parameters: { pointerType: 'mouse' }, actions }],
    })
  return {
    name: 'webkit',
    version: driver.version,
    open: (address) => driver.post('/url', { url: address }),
    run,
    point: (point) => mouse([moveTo(point)]),
    press: (point) =>
      mouse([
        moveTo(point),
        { type: 'pause', duration: REST_MS },
        { type: 'pointerDown', button: 0 },
        { type: 'pause', duration: HELD_MS },
        { type: 'pointerUp', button: 0 },
      ]),
    type: keys,
    pressEnter: () => keys(ENTER),
    giveTake: async (path) => {
      const input = await driver.post<{ [ELEMENT]: string }>('/element', {
        using: 'css selector',
        value: TAKE_INPUT,
      })
      await driver.post(`/element/${input[ELEMENT]}/value`, { text: path })
    },
    complaintsAtLoad: (address) => complaintsOfWindow(surroundings, address),
    end: () => processes.end(child),
  }
}

function moveTo({ x, y }: Point): object {
  return { type: 'pointerMove', duration: 0, x: Math.round(x), y: Math.round(y) }
}

/** What comes back of a script. */
interface Ran<Answer> {
  readonly answer: Answer
  /** What it threw. */
  readonly problem: string | null
}

/** Makes the page, not the window, the size that is wanted. */
async function resize(driver: WebDriver, run: Engine['run']): Promise<void> {
  await driver.post('/window/rect', SIZE)
  await pause(300)
  const page = await run(() => ({ width: innerWidth, height: innerHeight }))
  await driver.post('/window/rect', {
    width: 2 * SIZE.width - page.width,
    height: 2 * SIZE.height - page.height,
  })
  await pause(300)
}

/** The driver hands on nothing of the console; a window without it writes it down. */
async function complaintsOfWindow({ processes, env }: Surroundings, address: string): Promise<string[]> {
  const words = ['--enable-write-console-messages-to-stdout=true', address]
  const child = processes.start(MINIBROWSER, words, { env, stdio: ['ignore', 'pipe', 'pipe'] }, 'SIGKILL')
  const said: string[] = []
  for (const stream of [child.stdout, child.stderr])
    stream?.on('data', (bytes: Buffer) => said.push(bytes.toString()))
  await pause(LOAD_MS)
  processes.end(child)
  return said
    .join('')
    .split('\n')
    .filter((line) => /^CONSOLE .*\b(ERROR|WARN)/.test(line))
}
