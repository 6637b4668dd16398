/**
 * Linear value of every code of ITU-T G.711 (11/1988), full scale 1. A code is a sign, a segment of three bits and a
 * place of four bits within it; a decoder puts out the middle of the interval (tables 1 and 2, values y).
 */
function expansionOf(linearOf: (code: number) => number): Float32Array {
  return Float32Array.from({ length: 256 }, (_, code) => linearOf(code))
}

const SIGN_BIT = 0x80
const SEGMENT_SHIFT = 4
const PLACE_MASK = 0x0f

/** A-law, G.711 tables 1a and 1b: even bits are sent inverted, 4096 is full scale, segments 0 and 1 are alike. */
export const A_LAW = expansionOf((sent) => {
  const code = sent ^ 0x55
  const segment = (code >> SEGMENT_SHIFT) & 7
  const place = code & PLACE_MASK
  const value = segment === 0 ? 2 * place + 1 : (2 * place + 33) * 2 ** (segment - 1)
  return (code & SIGN_BIT ? value : -value) / 4096
})

/** mu-law, G.711 tables 2a and 2b: every bit is sent inverted, 8192 is full scale, and 33 offsets the segments. */
export const MU_LAW = expansionOf((sent) => {
  const code = ~sent
  const segment = (code >> SEGMENT_SHIFT) & 7
  const value = (2 * (code & PLACE_MASK) + 33) * 2 ** segment - 33
  // Subtracting keeps the second zero from becoming -0.
  return (code & SIGN_BIT ? 0 - value : value) / 8192
})
