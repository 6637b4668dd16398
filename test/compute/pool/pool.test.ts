import fc from 'fast-check'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { HashedTake } from '../../../src/compute/address'
import { ComputeError } from '../../../src/compute/compute-error'
import type { FactPiece } from '../../../src/compute/jobs/facts-job'
import type { Priority } from '../../../src/compute/messages'
import { Pool } from '../../../src/compute/pool/pool'
import { nextTask } from '../../../src/compute/port/next-task'
import { type ChainDoc, chainOf, integratedLoudness, renderChain } from '../../../src/core'
import { stageWith } from '../../setup/chains'
import { eventually } from '../../setup/eventually'
import { hashed } from '../../setup/evidence-here'
import { SEED } from '../../setup/random-chains'
import { noise } from '../../setup/signals'
import { type WorkerHere, WorkersHere } from '../../setup/workers-here'

const RATE = 8000
const take = hashed(noise(RATE, 2, 1, 3, (at) => (at < 1 ? 0.5 : 0.1)))
const other = hashed(noise(RATE, 2, 1, 4, () => 0.2))
/** Longer than what several workers hold, and given in several parts. */
const long = hashed(noise(RATE, 800, 1, 5, () => 0.2))
/** More than workers may hold one each. */
const longest = hashed({ sampleRate: RATE, channels: [...long.sound.channels, ...long.sound.channels] })

let workers: WorkersHere
let pool: Pool
beforeEach(() => {
  workers = new WorkersHere()
  pool = new Pool(workers.make, 2)
})
afterEach(() => {
  pool.end()
  workers.end()
})

const gain = (gainDb: number) => chainOf([stageWith('gain', { gainDb }, 'level')])

/** The take through a chain, as a delivery. */
function deliver(chain: ChainDoc, of: HashedTake = take, signal?: AbortSignal) {
  const options = signal ? { signal } : {}
  return pool.run('delivery', { chain }, { priority: 'screen', take: of, ...options }).result
}

/** Loudness behind a chain. */
async function lufs(chain: ChainDoc, of: HashedTake = take): Promise<unknown> {
  const pieces: FactPiece[] = []
  const wants = [{ stages: chain.stages, names: ['integratedLufs'] }] as const
  const onPiece = (piece: FactPiece) => void pieces.push(piece)
  const input = { take: of.hash, wants, known: [], keep: null }
  await pool.run('facts', input, { priority: 'evidence', take: of, onPiece }).result
  return pieces[0]?.value
}

const takesGiven = (worker: WorkerHere) => worker.asked.filter(({ type }) => type === 'take').length
const first = () => {
  const [worker] = workers.started
  if (!worker) throw new Error('no worker was started')
  return worker
}

describe('a pool of workers', () => {
  it('starts none before there is something to do, and no more than it may', async () => {
    expect(workers.started).toHaveLength(0)
    await Promise.all([1, 2, 3, 4, 5].map((gainDb) => deliver(gain(gainDb))))
    expect(workers.started.length).toBeLessThanOrEqual(pool.size)
    expect(new Pool(workers.make, 1).size).toBe(2)
    expect(new Pool(workers.make, 64).size).toBe(4)
  })

  it('gives back what a render gives, and leaves the take whole', async () => {
    const samples = take.sound.channels[0]?.length
    expect(await deliver(gain(-3))).toEqual(renderChain(take.sound, gain(-3)).sound)
    expect(take.sound.channels[0]?.length).toBe(samples)
  })

  it('does jobs where their take already is, and gives it once', async () => {
    for (const gainDb of [1, 2, 3]) await deliver(gain(gainDb))
    expect(workers.started.map(takesGiven)).toEqual([1])
  })

  it('has a long take held by one worker only', async () => {
    await deliver(gain(0), take)
    await Promise.all([1, 2, 3].map((gainDb) => lufs(gain(gainDb), longest)))
    const given = workers.asked.filter((message) => message.type === 'take' && message.hash === longest.hash)
    expect(given).toHaveLength(1)
  })

  it('does not let urgent jobs wait behind one another where another worker has less urgent ones only', async () => {
    const run = (priority: Priority, worker?: number) =>
      pool.run('delivery', { chain: gain(1) }, { priority, take, ...(worker !== undefined && { worker }) })
        .result
    await Promise.all([run('evidence', 0), run('evidence', 1)])
    const jobsOf = ({ asked }: WorkerHere) =>
      asked.flatMap((message) => (message.type === 'job' ? [message.priority] : [])).slice(1)
    const all = [run('study', 0), run('study', 0), run('study', 0), run('evidence'), run('evidence')]
    expect(workers.started.map(jobsOf)).toEqual([['study', 'study', 'study', 'evidence'], ['evidence']])
    await Promise.all(all)
  })

  it('gives a take up for another, and takes it in anew', async () => {
    await deliver(gain(1), take)
    pool.forgetTake()
    expect(await lufs(gain(1), other)).toBe(integratedLoudness(renderChain(other.sound, gain(1)).sound))
    pool.forgetTake()
    expect(await lufs(gain(1), take)).toBe(integratedLoudness(renderChain(take.sound, gain(1)).sound))
  })

  it('takes in whole a take that comes again while it is still coming in', async () => {
    const waiting = lufs(gain(0), long)
    while (workers.asked.filter(({ type }) => type === 'take-part').length < 4) await nextTask()
    pool.forgetTake()
    expect(await waiting).toBeUndefined()
    expect(await lufs(gain(0), long)).toBe(integratedLoudness(long.sound))
  })

  it('gives up all that is about a take when that is forgotten', async () => {
    const waiting = deliver(gain(1))
    pool.forgetTake()
    expect(await waiting).toBeNull()
  })

  it('answers at once what is given up, and does not begin what was given up before', async () => {
    const abort = new AbortController()
    const waiting = deliver(gain(1), long, abort.signal)
    abort.abort()
    let answered: unknown
    void waiting.then((result) => {
      answered = result
    })
    await Promise.resolve()
    await Promise.resolve()
    expect(answered).toBeNull()
    const asked = workers.asked.length
    expect(await deliver(gain(1), take, abort.signal)).toBeNull()
    expect(workers.asked).toHaveLength(asked)
  })

  it('says why a job failed, and goes on', async () => {
    const input = { take: take.hash, chain: gain(1), stageId: 'nowhere' }
    const failing = pool.run('makeup', input, { priority: 'screen', take }).result
    await expect(failing).rejects.toMatchObject({
      code: 'failed',
      message: expect.stringContaining('nowhere'),
    })
    expect(await deliver(gain(1))).not.toBeNull()
  })

  it('tells how far a job has come', async () => {
    const shares: number[] = []
    const input = { take: long.hash, chain: chainOf([stageWith('saturator', { driveDb: 6 })]) }
    const options = { priority: 'screen', take: long, onProgress: (share: number) => void shares.push(share) }
    await pool.run('delivery', input, { ...options, priority: 'screen' }).result
    expect(shares.length).toBeGreaterThan(1)
    expect(shares).toEqual(shares.toSorted((a, b) => a - b))
  })
})

describe('a worker that is gone', () => {
  it.each<[string, (worker: WorkerHere) => void]>([
    ['terminated', (worker) => worker.terminate()],
    [
      'silent',
      (worker) => {
        worker.isSilent = true
      },
    ],
    ['failing', (worker) => worker.err()],
  ])('because it is %s is replaced, given the take again, and its jobs are done', async (_, lose) => {
    await deliver(gain(1))
    const waiting = deliver(gain(2))
    lose(first())
    expect(await waiting).toEqual(renderChain(take.sound, gain(2)).sound)
    expect(workers.started.map(takesGiven)).toEqual([1, 1])
  })

  it('while nothing was asked of it is replaced once something is', async () => {
    await deliver(gain(1))
    first().terminate()
    expect(await deliver(gain(2))).not.toBeNull()
  })

  it('again and again is not started for ever: what was asked of it fails in words', async () => {
    const waiting = deliver(gain(1), long)
    const failing = expect(waiting).rejects.toMatchObject({ name: 'ComputeError', code: 'stopped' })
    for (let lost = 0; lost < 4; lost++) {
      const worker = await eventually(() => {
        const newest = workers.alive.at(-1)
        expect(newest?.come.length).toBeGreaterThan(0)
        return newest
      })
      worker?.err()
      worker?.terminate()
    }
    await failing
    expect(await deliver(gain(2))).not.toBeNull()
  })

  it('because its script does not load fails what waits, in words, and is tried again by the next job', async () => {
    workers.loads = false
    await expect(deliver(gain(1))).rejects.toMatchObject({ name: 'ComputeError', code: 'not-loaded' })
    expect(workers.started).toHaveLength(3)
    workers.loads = true
    expect(await deliver(gain(1))).not.toBeNull()
  })

  it('because its script does not load fails what waits, while another answers', async () => {
    const busy = deliver(gain(1), long)
    await eventually(() => expect(first().come.length).toBeGreaterThan(0))
    workers.loads = false
    const input = { chain: gain(1) }
    const options = { priority: 'screen', take: null, worker: 1 } as const
    await expect(pool.run('delivery', input, options).result).rejects.toMatchObject({ code: 'not-loaded' })
    expect(workers.started.length).toBeLessThan(6)
    expect(await busy).not.toBeNull()
  })
})

describe('a browser without workers', () => {
  const none = () => {
    throw new ComputeError('no-workers', 'this browser runs no workers.')
  }

  it('is told so by each job, and asked again by the next', async () => {
    const start = vi.fn<() => Worker>(none)
    pool = new Pool(start, 2)
    for (const gainDb of [1, 2])
      await expect(deliver(gain(gainDb))).rejects.toMatchObject({ code: 'no-workers' })
    start.mockImplementation(workers.make)
    expect(await deliver(gain(3))).toEqual(renderChain(take.sound, gain(3)).sound)
  })
})

describe(`workers that are killed at random moments (seed ${SEED})`, () => {
  const requests = fc.array(
    fc.record({
      kind: fc.constantFrom('delivery', 'lufs', 'abort', 'forget'),
      gainDb: fc.integer({ min: -12, max: 12 }),
      pauseMs: fc.nat(30),
      kill: fc.option(fc.nat(1), { freq: 2 }),
    }),
    { minLength: 3, maxLength: 8 },
  )

  it('leave no request without its answer, and no answer wrong', async () => {
    await fc.assert(
      fc.asyncProperty(requests, async (asked) => {
        workers = new WorkersHere()
        pool = new Pool(workers.make, 2)
        const answers: Promise<void>[] = []
        const isForgotten = (index: number) => asked.slice(index).some(({ kind }) => kind === 'forget')
        for (const [index, { kind, gainDb, pauseMs, kill }] of asked.entries()) {
          const chain = gain(gainDb)
          const abort = new AbortController()
          const expected = renderChain(take.sound, chain).sound
          const check = async (answer: Promise<unknown>, right: unknown) => {
            const found = await answer
            // What was given up is not answered, and nothing else is.
            if (found === null || found === undefined)
              expect(isForgotten(index) || abort.signal.aborted).toBe(true)
            else expect(found).toEqual(right)
          }
          if (kind === 'lufs') answers.push(check(lufs(chain), integratedLoudness(expected)))
          else answers.push(check(deliver(chain, take, abort.signal), expected))
          await new Promise((resolve) => setTimeout(resolve, pauseMs))
          if (kill !== null) workers.alive[kill]?.terminate()
          if (kind === 'abort') abort.abort()
          if (kind === 'forget') pool.forgetTake()
        }
        await Promise.all(answers)
        pool.end()
        workers.end()
      }),
      { seed: SEED, numRuns: 8, endOnFailure: true },
    )
  })
})
