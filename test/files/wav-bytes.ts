/** WAV files put together by hand, so that the reader is tested against files the writer never makes. */

export type Bytes = Uint8Array<ArrayBuffer>

/** Bytes written as hexadecimal, blanks allowed. */
export function fromHex(hex: string): Bytes {
  const digits = hex.replace(/\s/g, '')
  return Uint8Array.from({ length: digits.length / 2 }, (_, i) =>
    Number.parseInt(digits.slice(2 * i, 2 * i + 2), 16),
  )
}

export function toHex(bytes: Uint8Array): string {
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')
}

export function concat(...parts: readonly Uint8Array[]): Bytes {
  const out = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0))
  let at = 0
  for (const part of parts) {
    out.set(part, at)
    at += part.length
  }
  return out
}

export function ascii(text: string): Bytes {
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0))
}

/** `value` as little-endian bytes. */
export function littleEndian(value: number, bytes: number): Bytes {
  return Uint8Array.from({ length: bytes }, (_, i) => Math.floor(value / 256 ** i) % 256)
}

/** A chunk with its pad byte; `size` overrides what its header says. */
export function chunk(id: string, body: Uint8Array, size = body.length): Bytes {
  return concat(ascii(id), littleEndian(size, 4), body, new Uint8Array(body.length % 2))
}

export interface FormatFields {
  readonly tag?: number
  readonly channels?: number
  readonly sampleRate?: number
  readonly bits?: number
  readonly blockAlign?: number
}

/** A plain 16-byte format chunk. */
export function fmt({
  tag = 1,
  channels = 1,
  sampleRate = 48000,
  bits = 16,
  blockAlign,
}: FormatFields = {}): Bytes {
  const align = blockAlign ?? (channels * bits) / 8
  return chunk(
    'fmt ',
    concat(
      littleEndian(tag, 2),
      littleEndian(channels, 2),
      littleEndian(sampleRate, 4),
      littleEndian(sampleRate * align, 4),
      littleEndian(align, 2),
      littleEndian(bits, 2),
    ),
  )
}

/** The chunks in their RIFF frame. */
export function riff(...chunks: readonly Uint8Array[]): Bytes {
  const body = concat(ascii('WAVE'), ...chunks)
  return concat(ascii('RIFF'), littleEndian(body.length, 4), body)
}

/** Samples of any typed array as their (little-endian) bytes. */
export function bytesOf(samples: ArrayBufferView): Bytes {
  return new Uint8Array(samples.buffer, samples.byteOffset, samples.byteLength).slice()
}
