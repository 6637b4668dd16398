import { Pool } from '../../../src/compute/pool/pool'
import { wantsOf } from '../../../src/compute/select/select-evidence'
import workerUrl from '../../../src/compute/worker/compute.worker.ts?worker&url'
import { startingChain } from '../../../src/demo'
import { longTake } from '../long-take'

const MINUTES = 4
/** Jobs are cancelled so long after they were asked for, ms, up to this: in the middle of everything that they do. */
const LATEST_MS = 900
const STEP_MS = 37

/**
 * How long it takes a worker, in the middle of working out the evidence of a long take, to be at something else, ms: from
 * cancelling a job to the answer of the next one, which has nothing to do.
 * @param times how many jobs are cancelled
 */
export async function cancelMs(times: number): Promise<number[]> {
  const pool = new Pool(() => new Worker(workerUrl, { type: 'module' }), 1)
  const take = { hash: 'long', sound: longTake(MINUTES) }
  const next = () => pool.run('lanes', NOTHING, { priority: 'study', take: null, worker: 0 }).result
  const found: number[] = []
  for (let k = 0; k < times; k++) {
    const giveUp = new AbortController()
    const wants = wantsOf(startingChain(), true)
    const input = { take: take.hash, wants, known: [], keep: null }
    const job = pool.run('facts', input, { priority: 'evidence', take, signal: giveUp.signal })
    await new Promise((resolve) => setTimeout(resolve, (k * STEP_MS) % LATEST_MS))
    const start = performance.now()
    giveUp.abort()
    await next()
    found.push(performance.now() - start)
    await job.result
  }
  pool.end()
  return found
}

/** Lanes of an excerpt that no worker has: answered at once. */
const NOTHING = { excerptKey: 'none', excerpt: null, prefix: [], stages: [] }
