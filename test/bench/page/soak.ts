import { createApp } from '../../../src/session/app'
import { mulberry32 } from '../../setup/signals'
import { soakMoves } from './soak-moves'
import { type OutputFigures, watchOutputs } from './soak-probe'

/** What a soak came to. */
export interface SoakReport extends OutputFigures {
  readonly moves: number
  /** Messages of everything that went wrong, each once. */
  readonly problems: readonly string[]
  /** Memory of the page with its workers after each tenth, MB; empty where the browser does not tell. */
  readonly megabytes: readonly number[]
}

/** Between one move and the next, ms: three a second. */
const EVERY_MS = 330
const TENTHS = 10

/** Plays the demo on a real app, and moves everything about at random, for so many minutes. */
export async function soak(minutes: number, seed: number): Promise<SoakReport> {
  const random = mulberry32(seed)
  const figures = watchOutputs()
  const problems = new Set<string>()
  addEventListener('error', ({ message }) => problems.add(message))
  addEventListener('unhandledrejection', ({ reason }) => problems.add(String(reason)))
  const app = createApp()
  app.take.subscribe((state) => {
    for (const { message } of state.problems) problems.add(message)
  })
  app.evidence.subscribe(({ problem }) => problem !== null && problems.add(problem))
  await app.takes.openDemo()
  const all = soakMoves(app, random)
  const megabytes: number[] = []
  const wholeMs = minutes * 60_000
  const start = performance.now()
  let moves = 0
  let looks = 0
  // The browser answers when it has next cleaned up, which can take a while: moves go on meanwhile.
  const look = async () => {
    looks++
    const size = await memoryMegabytes()
    if (Number.isFinite(size)) megabytes.push(size)
  }
  for (let elapsed = 0; elapsed < wholeMs; elapsed = performance.now() - start) {
    if (!app.listen.getState().playing) await app.listening.play()
    all[Math.floor(random() * all.length)]?.()
    moves++
    if (elapsed >= (looks * wholeMs) / TENTHS) void look()
    await new Promise((resolve) => setTimeout(resolve, EVERY_MS))
  }
  await look()
  app.listening.stop()
  return { ...figures(), moves, problems: [...problems], megabytes }
}

/** Memory of the page, its workers and its audio thread, which the browser tells isolated pages alone. */
async function memoryMegabytes(): Promise<number> {
  const measure: unknown = Reflect.get(performance, 'measureUserAgentSpecificMemory')
  if (typeof measure !== 'function') return Number.NaN
  const result: unknown = await measure.call(performance)
  const bytes: unknown = typeof result === 'object' && result !== null ? Reflect.get(result, 'bytes') : null
  return typeof bytes === 'number' ? bytes / 2 ** 20 : Number.NaN
}
