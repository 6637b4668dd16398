import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { FromWorker, JobRequest } from '../../../src/compute/messages'
import { takeParts } from '../../../src/compute/pool/take-parts'
import { Runner } from '../../../src/compute/worker/runner'
import { type ChainDoc, chainOf, frameCount, renderChain } from '../../../src/core'
import { stageWith } from '../../setup/chains'
import { eventually } from '../../setup/eventually'
import { hashed } from '../../setup/evidence-here'
import { noise } from '../../setup/signals'

const RATE = 8000
const take = hashed(noise(RATE, 20, 1, 3, () => 0.3))
const chain = chainOf([stageWith('compressor', { thresholdDb: -30 }, 'hold')])

let told: FromWorker[]
let runner: Runner
let onTold: (message: FromWorker) => void
beforeEach(() => {
  told = []
  onTold = () => undefined
  runner = new Runner({
    postMessage: (message) => {
      told.push(message)
      onTold(message)
    },
  })
  // Whatever happens takes longer than a slice of work: messages are handled between all steps.
  let now = 0
  vi.spyOn(performance, 'now').mockImplementation(() => {
    now += 100
    return now
  })
})
afterEach(() => vi.restoreAllMocks())

function giveTake(): void {
  const { hash, sound } = take
  const { sampleRate, channels } = sound
  runner.handle({ type: 'take', hash, frames: frameCount(sound), channelCount: channels.length, sampleRate })
  for (const part of takeParts(take)) runner.handle(part)
}

/** When the next step is done, before anything else happens. */
function begun(): Promise<void> {
  return new Promise((resolve) => {
    onTold = ({ type }) => type === 'progress' && resolve()
  })
}

const job = (id: number, priority: JobRequest['priority'], doc: ChainDoc = chain): JobRequest => ({
  type: 'job',
  id,
  kind: 'delivery',
  input: { chain: doc },
  priority,
  take: take.hash,
})
const ended = () => told.flatMap((message) => (message.type === 'done' ? [message.id] : []))
const isEnded = (...ids: number[]) => eventually(() => expect(ended()).toEqual(ids))

describe('a worker with many jobs', () => {
  it('does the most urgent first, and of those the one asked first', async () => {
    giveTake()
    for (const [id, priority] of (['study', 'evidence', 'screen', 'evidence', 'hand'] as const).entries())
      runner.handle(job(id, priority))
    await isEnded(4, 2, 1, 3, 0)
    const result = told.flatMap((message) => (message.type === 'done' ? [message.result] : []))
    for (const sound of result) expect(sound).toEqual(renderChain(take.sound, chain).sound)
  })

  it('leaves what it is at for something more urgent', async () => {
    giveTake()
    runner.handle(job(1, 'evidence'))
    await begun()
    expect(ended()).toEqual([])
    runner.handle(job(2, 'hand'))
    await isEnded(2, 1)
  })

  it('lets jobs wait for their take', async () => {
    runner.handle(job(1, 'hand'))
    const other = { ...job(2, 'evidence'), take: 'another' }
    runner.handle(other)
    await new Promise((resolve) => setTimeout(resolve, 20))
    expect(told).toEqual([])
    giveTake()
    await isEnded(1)
  })

  it('is heard of at once when it gives up a job, begun or not', async () => {
    giveTake()
    runner.handle(job(1, 'evidence'))
    runner.handle(job(2, 'evidence'))
    await begun()
    for (const id of [1, 2]) runner.handle({ type: 'cancel', id, soon: false })
    expect(told.slice(-2)).toEqual([1, 2].map((id) => ({ type: 'cancelled', id })))
    runner.handle(job(3, 'study'))
    await isEnded(3)
    runner.handle({ type: 'cancel', id: 3, soon: false })
    expect(told.at(-1)?.type).toBe('done')
  })

  it('ends soon what has begun, at a good place, and at once what has not', async () => {
    giveTake()
    runner.handle(job(1, 'evidence'))
    runner.handle(job(2, 'evidence'))
    await begun()
    for (const id of [1, 2]) runner.handle({ type: 'cancel', id, soon: true })
    expect(told.at(-1)).toEqual({ type: 'cancelled', id: 2 })
    // A delivery has no such place but its end.
    await isEnded(1)
  })

  it('answers for a job that fails, and goes on with the others', async () => {
    giveTake()
    runner.handle({
      ...job(1, 'hand'),
      kind: 'makeup',
      input: { take: take.hash, chain, stageId: 'nowhere' },
    })
    runner.handle(job(2, 'evidence'))
    await isEnded(2)
    expect(told[0]).toMatchObject({ type: 'failed', id: 1, message: expect.stringContaining('nowhere') })
  })

  it('lets go of the take when told so, and says that it lives whatever it does', async () => {
    giveTake()
    runner.handle({ type: 'forget' })
    runner.handle(job(1, 'hand'))
    await new Promise((resolve) => setTimeout(resolve, 20))
    runner.handle({ type: 'ping' })
    expect(told).toEqual([{ type: 'pong' }])
    giveTake()
    await isEnded(1)
  })
})
