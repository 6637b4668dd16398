import { describe, expect, it } from 'vitest'
import { buffersIn } from '../../../src/compute/port/post-moving'

describe('parts', () => {
  it('go over once and are the same object from then on', () => {
    const sent = new SentParts<{ readonly name: string }>()
    const received = new ReceivedParts<{ readonly name: string }>()
    const [a, b] = [{ name: 'a' }, { name: 'b' }]
    const over = (values: readonly { readonly name: string }[]) => {
      const parts = structuredClone(sent.pack(values))
      return { whole: parts.filter(({ value }) => value).length, values: received.unpack(parts) }
    }
    const first = over([a, b])
    expect(first).toEqual({ whole: 2, values: [a, b] })
    const second = over([b, a])
    expect(second.whole).toBe(0)
    expect(second.values[1]).toBe(first.values[0])
    expect(over([a, a]).whole).toBe(0)
    // What was missing in one message is sent anew: the receiver has let go of it.
    expect(over([a, b])).toEqual({ whole: 1, values: [a, b] })
    expect(over([]).values).toEqual([])
    expect(over([a, a])).toEqual({ whole: 1, values: [a, a] })
  })

  it('that were never sent are an error', () => {
    expect(() => new ReceivedParts().unpack([{ number: 1, value: null }])).toThrow(RangeError)
  })
})

describe('memory that moves', () => {
  it('is found wherever it lies, once', () => {
    const samples = new Float32Array(4)
    const value = { a: [samples, samples.subarray(1)], b: { c: new Float64Array(2), d: null }, e: 'text' }
    expect([...buffersIn(value)]).toEqual([samples.buffer, value.b.c.buffer])
  })
})
