import { describe, expect, it } from 'vitest'
import { buffersIn, postMoving, postOwned } from '../../../src/compute/port/post-moving'

/** Takes over what is posted, as another thread does. */
function receiver() {
  const come: unknown[] = []
  const postMessage = (message: unknown, transfer: Transferable[]) =>
    void come.push(structuredClone(message, { transfer }))
  return { come, postMessage }
}

describe('memory that moves', () => {
  it('is found wherever it lies, once', () => {
    const samples = new Float32Array(4)
    const value = { a: [samples, samples.subarray(1)], b: { c: new Float64Array(2), d: null }, e: 'text' }
    expect([...buffersIn(value)]).toEqual([samples.buffer, value.b.c.buffer])
  })

  it('is gone from a message that is posted, and stays in one whose copy is', () => {
    const page = receiver()
    const [moved, kept] = [Float32Array.of(1, 2), Float32Array.of(3, 4)]
    postMoving(page, { samples: moved })
    postOwned(page, { samples: kept })
    expect([moved.length, kept.length]).toEqual([0, 2])
    expect(page.come).toEqual([{ samples: Float32Array.of(1, 2) }, { samples: Float32Array.of(3, 4) }])
  })
})
