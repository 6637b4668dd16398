import { describe, expect, it, vi } from 'vitest'
import { groundOf, Tracer } from '../../../src/compute/worker/tracer'
import type { FromTracer } from '../../../src/compute/worker/tracer-protocol'
import { TracerService } from '../../../src/compute/worker/tracer-service'
import { stageWith } from '../../setup/chains'
import { eventually } from '../../setup/eventually'
import { noise } from '../../setup/signals'

const take = noise(8000, 1, 1, 5, () => 0.3)
const ground = groundOf(take, { from: 0, to: 8000 }, 0, 0)
const stages = [stageWith('compressor', { thresholdDb: -40 }, 'hold')]

function service() {
  const told: FromTracer[] = []
  const errors: unknown[] = []
  const tracer = new TracerService({ postMessage: (message) => void told.push(message) }, (error) => {
    errors.push(error)
  })
  return { tracer, told, errors }
}

describe('a worker that traces', () => {
  it('tells the traces of its ground, and when its round is over', async () => {
    const { tracer, told } = service()
    tracer.handle({ type: 'ground', ground })
    tracer.handle({ type: 'trace', id: 4, stages })
    await eventually(() => expect(told.at(-1)).toEqual({ type: 'round-over', id: 4 }))
    expect(told[0]).toMatchObject({ type: 'live-traces', id: 4, traces: [{ stageId: 'hold', firstHop: 0 }] })
  })

  it('has nothing to trace once it has left its ground', async () => {
    const { tracer, told } = service()
    tracer.handle({ type: 'ground', ground })
    tracer.handle({ type: 'leave' })
    tracer.handle({ type: 'trace', id: 5, stages })
    await eventually(() => expect(told).toEqual([{ type: 'round-over', id: 5 }]))
  })

  it('ends a round that fails too, and tells why', async () => {
    const { tracer, told, errors } = service()
    const failure = new Error('no memory left')
    vi.spyOn(Tracer.prototype, 'round').mockRejectedValueOnce(failure)
    tracer.handle({ type: 'ground', ground })
    tracer.handle({ type: 'trace', id: 6, stages })
    await eventually(() => expect(told).toEqual([{ type: 'round-over', id: 6 }]))
    expect(errors).toEqual([failure])
    told.length = 0
    tracer.handle({ type: 'trace', id: 7, stages })
    await eventually(() => expect(told.at(-1)).toEqual({ type: 'round-over', id: 7 }))
    expect(told.length).toBeGreaterThan(1)
  })
})
