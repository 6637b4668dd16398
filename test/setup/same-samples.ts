import { expect } from 'vitest'

/** The bytes of an array of samples; null for anything else. */
function bytesOf(value: unknown): Buffer | null {
  const samples = value instanceof Float32Array || value instanceof Float64Array
  return samples ? Buffer.from(value.buffer, value.byteOffset, value.byteLength) : null
}

// `toEqual` looks at arrays of samples one by one, by name: a second for a million of them. Arrays of the same bytes
// are equal at once; all others are left to it, so that it shows where they differ.
expect.addEqualityTesters([
  (a: unknown, b: unknown) => {
    const [first, second] = [bytesOf(a), bytesOf(b)]
    const same =
      first !== null && second !== null && a?.constructor === b?.constructor && first.equals(second)
    return same ? true : undefined
  },
])
