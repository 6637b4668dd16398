import { renderChain } from '../../src/core'
import { startingChain } from '../../src/demo'
import { longTake } from './long-take'
import { medianMs } from './timing'

export interface Growth {
  readonly minutes: number
  readonly ms: number
  /** Memory held by what the render returned and worked on, MB. */
  readonly megabytes: number
}

/** Time and memory of rendering the starting chain over 1, 2, 4 and 8 minutes. */
export async function growth(): Promise<Growth[]> {
  const results: Growth[] = []
  for (const minutes of [1, 2, 4, 8]) {
    const take = longTake(minutes)
    const ms = await medianMs(() => renderChain(take, startingChain()))
    const before = await memoryHeld()
    const rendering = renderChain(take, startingChain())
    const megabytes = (process.memoryUsage().arrayBuffers - before) / 2 ** 20
    if (rendering.sound.channels.length === 0) throw new Error('nothing was rendered')
    results.push({ minutes, ms, megabytes })
  }
  return results
}

/** Memory of arrays that are still in use: what is given up is swept up a little later. */
async function memoryHeld(): Promise<number> {
  for (let i = 0; i < 3; i++) {
    globalThis.gc?.()
    await new Promise((resolve) => setTimeout(resolve, 100))
  }
  return process.memoryUsage().arrayBuffers
}
